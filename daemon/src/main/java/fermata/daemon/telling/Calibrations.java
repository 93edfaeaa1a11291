package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.OwnTimes;
import fermata.daemon.json.JsonLine;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import java.util.Optional;

/**
 * Solvers' times from calibration drills, kept as events of the captures in which the drills were done. Of each
 * solver's hand the newest capture's last one holds. Not thread-safe.
 */
public final class Calibrations {
    private final Captures captures;

    /** Over captures; keeping needs a store that may be written. */
    public Calibrations(Captures captures) {
        this.captures = captures;
    }

    /** Keeps what a drill in a timed capture taught; what holds already is not kept once more. */
    public void keep(CaptureRow capture, Hand hand, OwnTimes times) {
        boolean isNewest = newest(captures, capture.start().origin().solver(), hand)
                .filter(stated -> stated.captureId() == capture.id())
                .isPresent();
        if (isNewest && of(capture.start().origin().solver(), hand).equals(times)) {
            return;
        }
        new Afterwards(captures)
                .say(
                        capture,
                        at -> new Event.Calibrated(hand, times, capture.start().origin(), at));
    }

    /** What is known of a solver's hand; nothing of two hands or an unknown one, for a drill is for one. */
    public OwnTimes of(String solver, Hand hand) {
        return newest(captures, solver, hand)
                .map(stated -> {
                    CaptureRow capture = captures.find(stated.captureId()).orElseThrow();
                    return calibrated(capture, stated.line()).times();
                })
                .orElse(OwnTimes.NONE);
    }

    /** The line that holds for a solver's hand. Cost: a look at all such lines, of which there are few. */
    public static Optional<Captures.Stated> newest(Captures captures, String solver, Hand hand) {
        return captures.calibrations().stream()
                .filter(stated -> stated.solver().equals(solver))
                .filter(stated -> captures.find(stated.captureId())
                        .map(capture -> calibrated(capture, stated.line()).hand() == hand)
                        .orElse(false))
                .reduce((earlier, later) -> later);
    }

    private static Event.Calibrated calibrated(CaptureRow capture, String line) {
        return (Event.Calibrated) lines(capture).read(JsonLine.parse("capture " + capture.id(), 1, line));
    }

    /** A drill has times, whatever they rest on. */
    private static EventLines lines(CaptureRow capture) {
        return new EventLines(Long.toString(capture.id()), capture.start().origin(), StreamClock.DEVICE);
    }
}
