package fermata.analysis.load;

import fermata.analysis.rest.Cause;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.RestReading;
import java.util.List;

/**
 * What one hand did.
 *
 * @param solves how many attempts were counted
 * @param turns turns heard in them; two quarters of a half turn count as two
 * @param regrips how many regrips are expected to have cost time; those that cost none are not seen
 * @param turningMinutes turn time in all
 * @param longestMinutes the longest stretch without a break of {@value #BREAK_MINUTES} minutes, from the first turn to
 *     the last
 * @param advice what may be said about it
 */
public record HandLoad(
        int solves, long turns, double regrips, double turningMinutes, double longestMinutes, List<Advice> advice) {
    /** A pause this long counts as a break (HSE guidance L26: 5 to 10 minutes after 50 to 60). */
    public static final int BREAK_MINUTES = 5;
    /** After so long without one, a break is suggested (the same). */
    public static final int STRETCH_MINUTES = 50;

    /** What may be said. None of it is medical. */
    public enum Advice {
        /** A stretch was long: short, frequent breaks are more comfortable than long, rare ones. */
        TAKE_SHORT_BREAKS,
        /** Always said: pain, numbness or weakness are a reason to stop and see a licensed clinician. */
        STOP_WHEN_IT_HURTS
    }

    public HandLoad {
        advice = List.copyOf(advice);
        if (solves < 0 || turns < 0 || !(regrips >= 0) || !(turningMinutes >= 0) || !(longestMinutes >= 0)) {
            throw new IllegalArgumentException("a hand's load below zero: " + solves + " solves, " + turns + " turns, "
                    + regrips + " regrips, " + turningMinutes + " and " + longestMinutes + " minutes");
        }
    }

    /** How many regrips are expected to have cost time in one solve. */
    public static double regrips(RestReading reading) {
        return reading.beats().stream().mapToDouble(HandLoad::regrip).sum();
    }

    private static double regrip(ExplainedRest beat) {
        return beat.reading().restProbability()
                * beat.shares().stream()
                        .filter(share -> share.cause() == Cause.REGRIP)
                        .mapToDouble(CauseShare::probability)
                        .sum();
    }
}
