package fermata.analysis.load;

import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.PracticedSolve;
import fermata.analysis.rest.RestReading;
import java.util.List;
import java.util.Objects;

/**
 * What the hand did on a practice day.
 *
 * @param solves how many solves were counted
 * @param turns turns heard in them; two quarters of a half turn count as two
 * @param regrips how many regrips are expected to have cost time; those that cost none are not seen
 * @param turningMinutes turn time in all
 * @param longestMinutes the longest stretch without a break of {@value #BREAK_MINUTES} minutes, from the first turn to
 *     the last, as far as one capture shows
 * @param advice what may be said about it
 */
public record HandLoad(
        int solves, int turns, double regrips, double turningMinutes, double longestMinutes, List<Advice> advice) {
    /** A pause this long counts as a break (HSE guidance L26: 5 to 10 minutes after 50 to 60). */
    public static final int BREAK_MINUTES = 5;
    /** After so long without one, a break is suggested (the same). */
    public static final int STRETCH_MINUTES = 50;

    private static final double MINUTE = 60e6;

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

    /**
     * The load of a day.
     *
     * @param solves in the order of the day, all of one hand
     * @param readings of the same solves
     */
    public static HandLoad of(List<PracticedSolve> solves, List<RestReading> readings) {
        if (solves.size() != readings.size()) {
            throw new IllegalArgumentException(solves.size() + " solves with " + readings.size() + " rest readings");
        }
        int turns =
                solves.stream().mapToInt(solve -> solve.record().turns().size()).sum();
        double turning = solves.stream()
                .map(PracticedSolve::record)
                .filter(SolveRecord::isTimed)
                .mapToDouble(SolveRecord::timeMicros)
                .sum();
        double longest = longestMinutes(solves);
        List<Advice> advice = longest >= STRETCH_MINUTES
                ? List.of(Advice.TAKE_SHORT_BREAKS, Advice.STOP_WHEN_IT_HURTS)
                : List.of(Advice.STOP_WHEN_IT_HURTS);
        double regrips = readings.stream().mapToDouble(HandLoad::regrips).sum();
        return new HandLoad(solves.size(), turns, regrips, turning / MINUTE, longest, advice);
    }

    /** How many regrips are expected to have cost time in one solve. */
    public static double regrips(RestReading reading) {
        return reading.beats().stream().mapToDouble(HandLoad::regrip).sum();
    }

    private static double regrip(ExplainedRest beat) {
        return beat.reading().restProbability()
                * beat.shares().stream()
                        .filter(share -> share.cause() == Cause.REGRIP)
                        .mapToDouble(share -> share.probability())
                        .sum();
    }

    private static double longestMinutes(List<PracticedSolve> solves) {
        double longest = 0;
        double begun = 0;
        double ended = 0;
        String capture = "";
        for (PracticedSolve solve : solves) {
            SolveRecord record = solve.record();
            if (!record.isTimed()) {
                continue;
            }
            double from = record.firstTurnAtMicros() / MINUTE;
            String itsCapture = capture(record);
            if (!itsCapture.equals(capture) || from - ended >= BREAK_MINUTES) {
                begun = from;
                capture = itsCapture;
            }
            ended = from + record.timeMicros() / MINUTE;
            longest = Math.max(longest, ended - begun);
        }
        return longest;
    }

    private static String capture(SolveRecord record) {
        String id = Objects.requireNonNull(record.id(), "id");
        return id.substring(0, Math.max(0, id.lastIndexOf('-')));
    }
}
