package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A turn stream: what one capture says, as a file holds it.
 *
 * @param header its first line
 * @param events the others, in order
 */
public record TurnStream(StreamHeader header, List<Event> events) {
    /** Stands for the capture in verdicts while a stream has no number yet. */
    static final String NO_CAPTURE = "file";

    public TurnStream {
        Objects.requireNonNull(header, "header");
        events = List.copyOf(events);
    }

    /** All its lines, the header first. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(header.write());
        lines.addAll(eventLines());
        return lines;
    }

    /** The lines of its events, in order: the same for the same practice, whoever's it is said to be. */
    public List<String> eventLines() {
        EventLines writer = new EventLines(NO_CAPTURE, header.origin(), header.clock());
        return events.stream().map(writer::write).toList();
    }
}
