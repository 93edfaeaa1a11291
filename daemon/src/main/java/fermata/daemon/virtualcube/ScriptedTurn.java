package fermata.daemon.virtualcube;

import fermata.decoder.cube.Turn;
import java.util.Objects;

/**
 * A turn of the script.
 *
 * @param atMicros device time since the script began, in microseconds
 * @param turn the turn, in the core frame
 */
public record ScriptedTurn(long atMicros, Turn turn) {
    public ScriptedTurn {
        Objects.requireNonNull(turn, "turn");
        if (atMicros < 0) {
            throw new IllegalArgumentException("atMicros " + atMicros + " of turn " + turn + " is negative");
        }
    }
}
