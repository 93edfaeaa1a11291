package fermata.daemon.store;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The parameters that a night taught, frozen.
 *
 * @param id names them in every result that used them
 * @param day the night
 * @param json the parameters
 */
public record SnapshotRow(String id, LocalDate day, String json) {
    public SnapshotRow {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(json, "json");
    }
}
