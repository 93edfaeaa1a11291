package fermata.analysis.load;

import fermata.analysis.load.HandLoad.Advice;
import java.util.List;

/** Adds up what one hand did, attempt after attempt. Not thread-safe. */
public final class LoadLedger {
    private static final double MINUTE = 60e6;

    private int solves;
    private long turns;
    private double regrips;
    private double turningMicros;
    private double longestMicros;
    private long begun;
    private long ended = Long.MIN_VALUE;

    /**
     * Adds an attempt; they come in the order in which they began.
     *
     * @param startedMicros when its first turn came, microseconds since any moment that all attempts share
     * @param turningMicros its turn time, 0 if it has none
     * @param turnsHeard turns heard in it
     * @param regripsExpected how many regrips are expected in it
     */
    public void add(long startedMicros, long turningMicros, int turnsHeard, double regripsExpected) {
        solves++;
        turns += turnsHeard;
        regrips += regripsExpected;
        this.turningMicros += turningMicros;
        if (ended == Long.MIN_VALUE || startedMicros - ended >= HandLoad.BREAK_MINUTES * MINUTE) {
            begun = startedMicros;
        }
        ended = startedMicros + turningMicros;
        longestMicros = Math.max(longestMicros, ended - begun);
    }

    /** What the hand did so far. */
    public HandLoad load() {
        double longest = longestMicros / MINUTE;
        List<Advice> advice = longest >= HandLoad.STRETCH_MINUTES
                ? List.of(Advice.TAKE_SHORT_BREAKS, Advice.STOP_WHEN_IT_HURTS)
                : List.of(Advice.STOP_WHEN_IT_HURTS);
        return new HandLoad(solves, turns, regrips, turningMicros / MINUTE, longest, advice);
    }
}
