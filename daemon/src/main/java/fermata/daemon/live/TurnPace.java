package fermata.daemon.live;

import fermata.decoder.stream.StreamEvent.TurnSensed;
import java.util.OptionalLong;

/**
 * When turns were made, as they come: by the cube's own clock from turn to turn, by arrival where it has none or began
 * anew. Good for intervals within a solve, and for nothing else: a cube's clock may run away from the board's. The
 * analysis fits the clocks over the whole capture. O(1) a turn, unlike
 * that fit. Not thread-safe.
 */
final class TurnPace {
    private long atMicros = Long.MIN_VALUE;
    private OptionalLong deviceMicros = OptionalLong.empty();
    private int epoch = -1;

    /** Microseconds of the board's monotonic clock, never falling. */
    long atMicros(TurnSensed turn) {
        long next = turn.arrivalMicros();
        if (turn.epoch() == epoch && turn.deviceMicros().isPresent() && deviceMicros.isPresent()) {
            next = atMicros + turn.deviceMicros().getAsLong() - deviceMicros.getAsLong();
        }
        atMicros = Math.max(atMicros, next);
        deviceMicros = turn.deviceMicros();
        epoch = turn.epoch();
        return atMicros;
    }
}
