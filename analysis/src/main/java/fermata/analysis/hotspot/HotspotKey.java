package fermata.analysis.hotspot;

import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import java.util.Objects;
import java.util.Optional;

/**
 * What a loss is counted under; empty stands for all.
 *
 * @param before the stage that ended, or the one the loss lies within
 * @param after the stage that began; the same as {@code before} within a stage
 * @param caseName the case that was met there
 * @param cause why
 * @param hold which centre was up and which in front, two letters
 */
public record HotspotKey(
        Optional<StageName> before, Optional<StageName> after, String caseName, Optional<Cause> cause, String hold) {
    public HotspotKey {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(cause, "cause");
        Objects.requireNonNull(hold, "hold");
    }
}
