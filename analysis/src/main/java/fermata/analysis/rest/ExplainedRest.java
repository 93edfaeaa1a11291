package fermata.analysis.rest;

import fermata.analysis.rhythm.BeatReading;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * A beat that may hold a rest, and why.
 *
 * @param reading what the rhythm makes of it
 * @param shares by cause; their microseconds add up to the excess
 */
public record ExplainedRest(BeatReading reading, List<CauseShare> shares) {
    public ExplainedRest {
        Objects.requireNonNull(reading, "reading");
        shares = List.copyOf(shares);
        if (shares.isEmpty()) {
            throw new IllegalArgumentException(
                    "a rest after turn " + reading.beat().afterTurn() + " without a cause");
        }
    }

    /** The turn before it. */
    public int afterTurn() {
        return reading.beat().afterTurn();
    }

    /** Expected microseconds lost to a cause: its share, times the probability that this is a rest at all. */
    public double expectedMicros(Cause cause) {
        return reading.restProbability()
                * shares.stream()
                        .filter(share -> share.cause() == cause)
                        .mapToDouble(CauseShare::micros)
                        .sum();
    }

    /** The cause with the largest share. */
    public CauseShare largest() {
        return shares.stream()
                .max(Comparator.comparingDouble(CauseShare::micros))
                .orElseThrow();
    }
}
