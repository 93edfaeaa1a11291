package fermata.daemon.store;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A derived summary of a practice day as it is kept.
 *
 * @param day the day
 * @param codeVersion what derived it
 * @param snapshotId the learned parameters it used
 * @param json the whole of it
 */
public record NightRow(LocalDate day, String codeVersion, String snapshotId, String json) {
    public NightRow {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(codeVersion, "codeVersion");
        Objects.requireNonNull(snapshotId, "snapshotId");
        Objects.requireNonNull(json, "json");
    }
}
