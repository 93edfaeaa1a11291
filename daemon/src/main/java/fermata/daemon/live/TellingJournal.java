package fermata.daemon.live;

import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Captures;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.CubeState;
import java.util.List;
import java.util.Objects;

/**
 * Keeps what was announced and told during a capture, with the capture. Each call waits for the disk.
 *
 * @param captures where captures are kept
 * @param captureId the running one
 * @param origin cube, solver and hand
 * @param startedNanos the monotonic clock's reading when it began
 */
public record TellingJournal(Captures captures, long captureId, Origin origin, long startedNanos) {
    private static final long NANOS_PER_MICRO = 1_000;

    public TellingJournal {
        Objects.requireNonNull(captures, "captures");
        Objects.requireNonNull(origin, "origin");
    }

    /** The journal of a capture that was begun. */
    public static TellingJournal of(Captures captures, long captureId) {
        CaptureStart start = captures.find(captureId).orElseThrow().start();
        return new TellingJournal(captures, captureId, start.origin(), start.startedNanos());
    }

    /** A scramble was announced at that moment of the board's monotonic clock. */
    void scramble(Scramble scramble, long boardMicros) {
        keep(new Event.Mark(MarkKind.SCRAMBLE, scramble.words(), origin, sinceStart(boardMicros)));
    }

    /** From that moment on this tracked state means solved. */
    void reference(CubeState state, long boardMicros) {
        keep(new Event.Reference(state, origin, sinceStart(boardMicros)));
    }

    private long sinceStart(long boardMicros) {
        return Math.max(0, boardMicros - startedNanos / NANOS_PER_MICRO);
    }

    private void keep(Event event) {
        // A running capture has a clock; which one does not show in a line.
        EventLines lines = new EventLines(Long.toString(captureId), origin, StreamClock.DEVICE);
        captures.append(captureId, List.of(new ToldEvent(EventLines.kind(event), Event.VERSION, lines.write(event))));
    }
}
