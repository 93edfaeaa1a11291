package fermata.daemon.stream;

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
        EventLines writer = lineWriter();
        events.forEach(event -> lines.add(writer.write(event)));
        return lines;
    }

    private EventLines lineWriter() {
        return new EventLines(NO_CAPTURE, header.origin(), header.clock());
    }
}
