package fermata.analysis.event;

import java.util.List;
import java.util.Objects;

/**
 * All events of one capture, in order. A turn's <em>raw index</em> is its place among the {@link Event.Turned} events,
 * from 0; no other event is counted and nothing is ever merged.
 *
 * <p>Until the first snapshot the tracked state is counted from {@link fermata.decoder.cube.CubeState#SOLVED}, and
 * until the first reference event that state means 'solved'. Either all turns are timed or none is. Times may step back
 * a little where a device's clock was fitted anew; the order of the list is the order of the turns.
 *
 * @param captureId stable for ever; attempts are named after it
 * @param events first to last
 */
public record CaptureLog(String captureId, List<Event> events) {
    public CaptureLog {
        if (Objects.requireNonNull(captureId, "captureId").isBlank()) {
            throw new IllegalArgumentException("a capture needs an id: its attempts are named after it");
        }
        events = List.copyOf(events);
        requireOneClock(captureId, events);
    }

    private static void requireOneClock(String captureId, List<Event> events) {
        int raw = 0;
        boolean timed = false;
        for (Event event : events) {
            if (event instanceof Event.Turned turned) {
                if (raw > 0 && turned.isTimed() != timed) {
                    throw new IllegalArgumentException("capture " + captureId + ": turn " + raw
                            + (timed
                                    ? " has no time though the turns before it have"
                                    : " has a time, unlike those before"));
                }
                timed = turned.isTimed();
                raw++;
            }
        }
    }

    /** The turn events alone: {@code turns().get(i)} has the raw index i. Cost: one pass. */
    public List<Event.Turned> turns() {
        return events.stream()
                .filter(Event.Turned.class::isInstance)
                .map(Event.Turned.class::cast)
                .toList();
    }
}
