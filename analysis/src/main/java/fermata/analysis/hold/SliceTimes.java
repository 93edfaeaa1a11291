package fermata.analysis.hold;

/**
 * The times between turns as evidence against slices: a slice moves both faces at once, so two turns of which the
 * second was long in coming are two moves. Nothing else is said. Immutable; thread-safe.
 */
public final class SliceTimes implements HoldEvidence {
    /** The halves of no slice are farther apart. Our own limit, no source; a slow radio may delay one of them. */
    public static final long MOST_MICROS = 150_000;

    private final long[] micros;

    /**
     * Evidence of these intervals.
     *
     * @param micros by turn, the time since the turn before it; what stands for the first turn is not looked at
     */
    public SliceTimes(long[] micros) {
        this.micros = micros.clone();
    }

    @Override
    public boolean mayBeOneMove(int turn) {
        return micros[turn] <= MOST_MICROS;
    }
}
