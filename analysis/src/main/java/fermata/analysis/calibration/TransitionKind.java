package fermata.analysis.calibration;

/** What a hand does between one turn and the next, by design of the drill. */
public enum TransitionKind {
    /** The next turn just follows. */
    FLUENT(250_000),
    /** The wrist has turned as far as it goes, so the hand takes hold anew. */
    REGRIP(420_000),
    /** The whole cube is rotated. */
    ROTATION(550_000),
    /** The next turn is a wide one. */
    WIDE(300_000);

    /** What stands for a solver of whom nothing is known, in microseconds; our guess, no source. */
    final double priorMicros;

    TransitionKind(double priorMicros) {
        this.priorMicros = priorMicros;
    }
}
