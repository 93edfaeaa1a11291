package fermata.daemon.reading;

import fermata.analysis.attempt.AttemptFinder;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Segment;
import fermata.daemon.json.JsonLine;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import fermata.daemon.turnfile.StreamHeader;
import fermata.decoder.notation.Sequence;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;

/** Reads a stored turn stream into events. Stateless. */
public final class ToldReading {
    private ToldReading() {}

    static CaptureReading of(CaptureRow capture, List<ToldEvent> told) {
        StreamHeader header = StreamHeader.read(capture.header());
        List<Event> events = events(capture, header.clock(), told);
        CaptureLog log = new CaptureLog(Long.toString(capture.id()), events);
        if (!header.scramble().isEmpty()) {
            log = announced(log, header, capture.start().origin());
        }
        return new CaptureReading(log, header.clock(), CaptureReading.USUAL_COLOURS, tally(events));
    }

    /** The events of stored lines. */
    public static List<Event> events(CaptureRow capture, StreamClock clock, List<ToldEvent> told) {
        EventLines reader =
                new EventLines(Long.toString(capture.id()), capture.start().origin(), clock);
        List<Event> events = new ArrayList<>();
        for (ToldEvent event : told) {
            events.add(reader.read(JsonLine.parse("capture " + capture.id(), events.size() + 1, event.line())));
        }
        return events;
    }

    /**
     * Puts the header's scramble before the first event. If the turns do not do it, the stream begins with the cube
     * scrambled, as a solve that somebody wrote down does: then the state is put there too.
     */
    private static CaptureLog announced(CaptureLog log, StreamHeader header, Origin origin) {
        long at = header.clock() == StreamClock.NONE ? Event.NO_TIME : 0;
        List<Event> events = new ArrayList<>();
        events.add(new Event.Mark(MarkKind.SCRAMBLE, header.scramble(), origin, at));
        events.addAll(log.events());
        CaptureLog announced = new CaptureLog(log.captureId(), events);
        if (isDone(announced)) {
            return announced;
        }
        events.add(1, new Event.Snapshot(Sequence.parse(header.scramble()).state(), origin, at));
        return new CaptureLog(log.captureId(), events);
    }

    private static boolean isDone(CaptureLog log) {
        return AttemptFinder.find(log).stream()
                .flatMap(segment -> segment.asAttempt().stream())
                .map(Segment.Attempt::scramble)
                .anyMatch(scramble -> !scramble.announced().isEmpty() && scramble.boundary() != Boundary.INFERRED);
    }

    private static Tally tally(List<Event> events) {
        long heard = 0;
        long repaired = 0;
        long lost = 0;
        long openGaps = 0;
        for (Event event : events) {
            if (event instanceof Event.Turned turned) {
                heard += turned.source() == TurnSource.HEARD ? 1 : 0;
                repaired += turned.source() == TurnSource.REPAIRED ? 1 : 0;
            } else if (event instanceof Event.Gap gap) {
                openGaps += gap.turnsLost() == Event.Gap.UNKNOWN_COUNT ? 1 : 0;
                lost += Math.max(0, gap.turnsLost());
            }
        }
        return new Tally(heard, repaired, lost, openGaps, 0, 0);
    }
}
