package fermata.analysis.hotspot;

import java.util.Objects;

/**
 * What a loss is counted under. Each part is a word as written on screens; empty stands for all.
 *
 * @param before the stage that ended, or the one the loss lies within
 * @param after the stage that began; the same as {@code before} within a stage
 * @param caseName the case that was met there
 * @param cause why, as {@link fermata.analysis.rest.Cause#written()}
 * @param hold which centre was up and which in front, two letters
 */
public record HotspotKey(String before, String after, String caseName, String cause, String hold) {
    public HotspotKey {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(cause, "cause");
        Objects.requireNonNull(hold, "hold");
    }
}
