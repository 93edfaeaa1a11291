package fermata.analysis.lookahead;

import java.util.Optional;

/**
 * Whether a rest is a fermata: one before a pair or block that could have been found earlier from what was visible. Or
 * why nobody can say.
 */
public enum FermataJudgement {
    /** It is. */
    FERMATA,
    /** It is none: what came next could not be found earlier, or nothing new came next. */
    NONE,
    /** Inside a cross, or what another method begins with: it is planned as a whole, nothing is looked for. */
    OPENING,
    /** In the last layer, or what another method ends with: a case is recognised, no piece is looked for. */
    LAST_LAYER,
    /** Before a block not all of whose pieces could be found: a hand begins with fewer, so that proves nothing. */
    BLOCK,
    /** No stages are known here, so nobody knows what was looked for. */
    NO_STAGES;

    /** Yes or no; empty if it is not judged. */
    public Optional<Boolean> isFermata() {
        return this == FERMATA || this == NONE ? Optional.of(this == FERMATA) : Optional.empty();
    }
}
