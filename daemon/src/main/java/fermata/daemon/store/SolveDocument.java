package fermata.daemon.store;

import java.util.Objects;

/**
 * A derived solve in full.
 *
 * @param row what a list needs of it
 * @param json the whole of it
 */
public record SolveDocument(SolveRow row, String json) {
    public SolveDocument {
        Objects.requireNonNull(row, "row");
        Objects.requireNonNull(json, "json");
    }
}
