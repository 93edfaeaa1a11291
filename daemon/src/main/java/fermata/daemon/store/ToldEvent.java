package fermata.daemon.store;

import java.util.Objects;

/**
 * An event that no frame told, as its line in a turn stream.
 *
 * @param kind the word that its line begins with (docs/formats.md): {@code turn}, {@code gap} and so on
 * @param version of the kind's meaning
 * @param line one JSON object
 */
public record ToldEvent(String kind, int version, String line) {
    public ToldEvent {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(line, "line");
    }
}
