package fermata.rehearsal.truth;

import fermata.decoder.cube.Span;
import java.util.Objects;

/**
 * A stage of a solve.
 *
 * @param name {@code cross, pair1..pair4, orient, permute} or {@code auf}
 * @param caseName the customary case number or letter, for a pair the place by its two centres (two places joined by
 *     {@code +} if both came home at once), or empty
 * @param turns its turns; none if it was done already
 * @param looks how many sequences it took, 0 if it was done already
 */
public record StageTruth(String name, String caseName, Span turns, int looks) {
    public StageTruth {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(turns, "turns");
    }
}
