package fermata.analysis.rest;

import java.util.Objects;

/**
 * A cause's part in a rest.
 *
 * @param cause which
 * @param probability that it took part, given that this is a rest
 * @param micros how much of the excess is its own, on average over what may have happened
 */
public record CauseShare(Cause cause, double probability, double micros) {
    public CauseShare {
        Objects.requireNonNull(cause, "cause");
        if (!(probability >= 0 && probability <= 1 + 1e-9) || !(micros >= 0)) {
            throw new IllegalArgumentException(
                    "share of " + cause + " with probability " + probability + ", " + micros + " us");
        }
    }
}
