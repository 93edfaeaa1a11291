package fermata.analysis.record;

import fermata.analysis.event.Event;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.TurnSource;
import java.util.Objects;

/**
 * One turn of a solve, exactly as it stands in the log.
 *
 * @param index counts the raw turns of the solve from 0
 * @param atMicros since the solve's first turn, or {@link Event#NO_TIME}
 * @param core in the core frame
 * @param source heard or repaired
 */
public record TurnRecord(int index, long atMicros, Turn core, TurnSource source) {
    public TurnRecord {
        Objects.requireNonNull(core, "core");
        Objects.requireNonNull(source, "source");
    }

    /** Whether the turn has a time. */
    public boolean isTimed() {
        return atMicros != Event.NO_TIME;
    }
}
