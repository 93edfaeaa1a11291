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
import java.util.Iterator;
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
     * Adds streams, each as it is asked for.
     *
     * @param source where they come from, such as a file's name
     */
    public Imported add(String source, Iterator<TurnStream> streams) {
        Told told = new Told(source, streams);
        List<Long> captureIds = store.captures().add(told);
        return new Imported(captureIds, told.turns);
    }

    /** The streams as the store keeps them, counted on the way. */
    private final class Told implements Iterator<ToldStream> {
        private final String source;
        private final Iterator<TurnStream> streams;
        private long turns;

        private Told(String source, Iterator<TurnStream> streams) {
            this.source = source;
            this.streams = streams;
        }

        @Override
        public boolean hasNext() {
            return streams.hasNext();
        }

        @Override
        public ToldStream next() {
            TurnStream stream = streams.next();
            turns += stream.events().stream()
                    .filter(Event.Turned.class::isInstance)
                    .count();
            return told(source, stream);
        }
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
