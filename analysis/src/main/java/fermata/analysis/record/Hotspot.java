package fermata.analysis.record;

import java.util.Objects;

/**
 * Where seconds went: the rests at the change from one stage to the next, over the solves of a day.
 *
 * @param before the stage that ended
 * @param after the stage that began
 * @param count in how many solves that change was timed
 * @param typical the median rest there, counting 0 where the rhythm ran on; too few under five
 */
public record Hotspot(StageName before, StageName after, int count, Result typical) {
    public Hotspot {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(typical, "typical");
    }
}
