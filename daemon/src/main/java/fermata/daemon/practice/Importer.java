package fermata.daemon.practice;

import fermata.analysis.event.Event;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Captures.ToldStream;
import fermata.daemon.store.Store;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.stream.EventLines;
import fermata.daemon.stream.StreamHeader;
import fermata.daemon.stream.StreamHeader.StreamStart;
import fermata.daemon.stream.TurnStream;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Puts the streams of a file into the store, all or none. Not thread-safe. */
public final class Importer {
    private static final String NO_BOOT = "imported";

    private final Store store;
    private final Clock clock;

    /**
     * @param clock says when a stream begins that does not say so itself
     */
    public Importer(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /**
     * What came of it.
     *
     * @param captureIds the numbers of the new captures
     * @param turns how many turns they hold
     */
    public record Imported(List<Long> captureIds, long turns) {
        public Imported {
            captureIds = List.copyOf(captureIds);
        }
    }

    /**
     * Adds streams.
     *
     * @param source where they come from, such as a file's name
     */
    public Imported add(String source, List<TurnStream> streams) {
        List<ToldStream> told =
                streams.stream().map(stream -> told(source, stream)).toList();
        long turns = streams.stream()
                .flatMap(stream -> stream.events().stream())
                .filter(Event.Turned.class::isInstance)
                .count();
        return new Imported(store.captures().add(told), turns);
    }

    private ToldStream told(String source, TurnStream stream) {
        StreamHeader header = stream.header();
        StreamStart started = header.started()
                .orElseGet(() -> new StreamStart(clock.instant().truncatedTo(ChronoUnit.MILLIS), clock.getZone()));
        StreamHeader whole = new StreamHeader(
                header.clock(), header.origin(), header.scramble(), Optional.of(started), header.truth());
        List<String> lines = stream.lines();
        List<ToldEvent> events = new ArrayList<>();
        for (int i = 0; i < stream.events().size(); i++) {
            events.add(new ToldEvent(EventLines.kind(stream.events().get(i)), Event.VERSION, lines.get(i + 1)));
        }
        CaptureStart start =
                new CaptureStart(UUID.randomUUID(), NO_BOOT, started.at(), 0, started.zone(), header.origin(), source);
        return new ToldStream(start, whole.write(), header.truth(), events);
    }
}
