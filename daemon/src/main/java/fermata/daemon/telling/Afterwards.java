package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.reading.CaptureReading;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import java.util.List;
import java.util.function.LongFunction;

/** Keeps what solvers say afterwards as events at the end of a capture. Not thread-safe. */
final class Afterwards {
    private final Captures captures;

    /** Over the captures of a store that may be written. */
    Afterwards(Captures captures) {
        this.captures = captures;
    }

    /**
     * Appends an event.
     *
     * @param event made from its time: times in a stream never fall, so that of the last event
     */
    void say(CaptureRow capture, LongFunction<Event> event) {
        CaptureReading reading = new CaptureReader(captures).read(capture);
        long at = reading.clock() == StreamClock.NONE
                ? Event.NO_TIME
                : reading.log().events().stream()
                        .mapToLong(Event::atMicros)
                        .max()
                        .orElse(0);
        Event said = event.apply(at);
        String line =
                new EventLines(Long.toString(capture.id()), capture.start().origin(), reading.clock()).write(said);
        captures.append(capture.id(), List.of(new ToldEvent(EventLines.kind(said), Event.VERSION, line)));
    }
}
