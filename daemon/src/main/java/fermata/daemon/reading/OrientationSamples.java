package fermata.daemon.reading;

import fermata.analysis.event.Event;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Puts orientation samples among a capture's other events, by time, and leaves out what a dense sensor sends too much
 * of: besides the last sample before each turn and the first after it, one every {@value #APART_MICROS} us stays. The
 * frames keep them all. Stateless; linear but for the sort.
 */
final class OrientationSamples {
    private static final long APART_MICROS = 50_000;

    private OrientationSamples() {}

    /** The events in their order, the samples between them; at equal times a sample comes first. */
    static List<Event> merged(List<Event> events, List<Event.Oriented> samples) {
        List<Event.Oriented> sorted = samples.stream()
                .sorted(Comparator.comparingLong(Event.Oriented::atMicros))
                .toList();
        List<Event> merged = new ArrayList<>(events.size() + sorted.size());
        int next = 0;
        for (Event event : events) {
            int from = next;
            while (next < sorted.size() && sorted.get(next).atMicros() <= event.atMicros()) {
                next++;
            }
            thin(sorted.subList(from, next), merged);
            merged.add(event);
        }
        thin(sorted.subList(next, sorted.size()), merged);
        return merged;
    }

    /** Samples between two other events: the first, the last, and between them only what is far enough apart. */
    private static void thin(List<Event.Oriented> between, List<Event> kept) {
        long last = Long.MIN_VALUE;
        for (int place = 0; place < between.size(); place++) {
            Event.Oriented sample = between.get(place);
            boolean isEnd = place == 0 || place == between.size() - 1;
            if (isEnd || sample.atMicros() - last >= APART_MICROS) {
                kept.add(sample);
                last = sample.atMicros();
            }
        }
    }
}
