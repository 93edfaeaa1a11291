package fermata.daemon.live;

import java.util.Objects;

/**
 * One thing to tell a page.
 *
 * @param event {@code state}, {@code link}, {@code turn} or {@code evening}
 * @param json one JSON object on one line, as {@code docs/formats.md} has it
 */
public record LiveMessage(String event, String json) {
    public LiveMessage {
        Objects.requireNonNull(event, "event");
        Objects.requireNonNull(json, "json");
    }
}
