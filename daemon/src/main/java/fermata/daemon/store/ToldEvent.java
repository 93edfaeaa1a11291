package fermata.daemon.store;

import java.util.Objects;

/**
 * An event that no frame told, as its line in a turn stream.
 *
 * @param kind {@code turn}, {@code gap}, {@code snapshot}, {@code reference}, {@code mark}, {@code verdict},
 *     {@code hand} or {@code calibration}
 * @param version of the kind's meaning
 * @param line one JSON object
 */
public record ToldEvent(String kind, int version, String line) {
    public ToldEvent {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(line, "line");
    }
}
