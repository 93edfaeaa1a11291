package fermata.analysis.regrip;

import fermata.analysis.statistics.Interval;
import java.util.List;
import java.util.Objects;

/**
 * Where a hand took hold anew.
 *
 * @param turns one for each {@link GripTurn}
 * @param expected how many regrips are expected
 * @param count the central 95 % of how many there were, given the model
 */
public record RegripReading(List<AtTurn> turns, double expected, Interval count) {
    /** Nothing can be said. */
    public static final RegripReading NONE = new RegripReading(List.of(), 0, new Interval(0, 0));

    /**
     * One turn.
     *
     * @param probability that the hand took hold anew before it, 0..1; 0 for the first: how a cube is taken up is none
     * @param fingers by {@link Finger}, how likely it made the turn
     */
    public record AtTurn(double probability, List<Double> fingers) {
        public AtTurn {
            fingers = List.copyOf(fingers);
            if (!(probability >= 0 && probability <= 1)) {
                throw new IllegalArgumentException("probability " + probability + " of a regrip is not in 0..1");
            }
        }
    }

    public RegripReading {
        turns = List.copyOf(turns);
        Objects.requireNonNull(count, "count");
    }
}
