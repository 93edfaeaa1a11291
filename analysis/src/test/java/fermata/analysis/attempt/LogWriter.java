package fermata.analysis.attempt;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.analysis.event.Ruling;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;

/** Writes a log as an evening goes by: turns a fixed interval apart, pauses where the test says so. */
public final class LogWriter {
    private static final Origin ORIGIN = new Origin("galley cube", "the ferry cook", Hand.LEFT);
    private static final long INTERVAL_MICROS = 300_000;

    private final List<Event> events = new ArrayList<>();
    private final boolean timed;
    private long now;

    private LogWriter(boolean timed) {
        this.timed = timed;
    }

    public static LogWriter timed() {
        return new LogWriter(true);
    }

    public static LogWriter untimed() {
        return new LogWriter(false);
    }

    public LogWriter turn(String words) {
        return turn(Sequence.parse(words).walk(Orientation.IDENTITY).turns());
    }

    public LogWriter turn(List<Turn> turns) {
        for (Turn turn : turns) {
            now += INTERVAL_MICROS;
            events.add(new Event.Turned(turn, TurnSource.HEARD, ORIGIN, at()));
        }
        return this;
    }

    public LogWriter undo(String words) {
        return turn(Sequence.parse(words).inverse().walk(Orientation.IDENTITY).turns());
    }

    public LogWriter pause(double seconds) {
        now += Math.round(seconds * 1e6);
        return this;
    }

    public LogWriter announce(String words) {
        return mark(MarkKind.SCRAMBLE, words);
    }

    public LogWriter mark(MarkKind kind, String text) {
        events.add(new Event.Mark(kind, text, ORIGIN, at()));
        return this;
    }

    public LogWriter lose(int turns) {
        events.add(new Event.Gap(turns, ORIGIN, at()));
        return this;
    }

    public LogWriter snapshot(CubeState state) {
        events.add(new Event.Snapshot(state, ORIGIN, at()));
        return this;
    }

    public LogWriter reference(CubeState state) {
        events.add(new Event.Reference(state, ORIGIN, at()));
        return this;
    }

    public LogWriter rule(String attemptId, Ruling ruling) {
        events.add(new Event.Verdict(attemptId, ruling, ORIGIN, at()));
        return this;
    }

    public CaptureLog log() {
        return new CaptureLog("c1", events);
    }

    private long at() {
        return timed ? now : Event.NO_TIME;
    }
}
