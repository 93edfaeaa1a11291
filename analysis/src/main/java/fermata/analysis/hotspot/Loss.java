package fermata.analysis.hotspot;

import java.util.Objects;

/**
 * Time that one cause is expected to have cost at one turn.
 *
 * @param key what it is counted under
 * @param solveId the solve
 * @param afterTurn the turn before it
 * @param atMicros when that turn came, since the solve's first turn
 * @param micros expected microseconds
 * @param clarity how likely it is a rest with this cause in it, 0..1
 */
public record Loss(HotspotKey key, String solveId, int afterTurn, long atMicros, double micros, double clarity) {
    public Loss {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(solveId, "solveId");
        if (!(micros >= 0) || !(clarity >= 0 && clarity <= 1)) {
            throw new IllegalArgumentException("loss of " + micros + " us with clarity " + clarity + " in " + solveId);
        }
    }

    Loss of(double expectedMicros, double likely) {
        return new Loss(key, solveId, afterTurn, atMicros, expectedMicros, likely);
    }
}
