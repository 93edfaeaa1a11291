package fermata.analysis.hold;

import fermata.decoder.orientation.Orientation;

/**
 * What is known besides the turns, as log-likelihoods that join the lattice: any constant may be added to all
 * holds of a turn. Implementations are pure and thread-safe.
 */
public interface HoldEvidence {
    /** Nothing known besides the turns. */
    HoldEvidence NONE = new HoldEvidence() {};

    /** Natural log-likelihood of what was seen around a turn if the hold before it is this one. */
    default double ofHold(int turn, Orientation hold) {
        return 0;
    }

    /**
     * Natural log-likelihood ratio of what was seen between a turn (from 1) and the one before it, with a
     * rotation there against without. Wide turns and slices are not asked about: their rotation is part of a turn.
     */
    default double ofRotation(int beforeTurn, Orientation rotation) {
        return 0;
    }
}
