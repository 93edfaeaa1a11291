package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.daemon.store.CaptureKind;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Captures.Kept;
import fermata.daemon.store.Captures.ToldStream;
import fermata.daemon.store.Store;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamHeader;
import fermata.daemon.turnfile.StreamHeader.StreamStart;
import fermata.daemon.turnfile.TurnStream;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Puts the streams of a file into the store, all or none, and none a second time. Not thread-safe. */
public final class Importer {
    private static final String NO_BOOT = "imported";
    /** The year in which the puzzle was invented. */
    private static final Instant EARLIEST = Instant.parse("1974-01-01T00:00:00Z");

    private static final Instant LATEST = Instant.parse("2100-01-01T00:00:00Z");

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
     * @param alreadyThere for each stream that was in the home already, the number of its capture
     */
    public record Imported(List<Long> captureIds, long turns, List<Long> alreadyThere) {
        public Imported {
            captureIds = List.copyOf(captureIds);
            alreadyThere = List.copyOf(alreadyThere);
        }
    }

    /**
     * Adds streams, each as it is asked for, unless it is in the home already: the same events, and in the header
     * nothing that the capture's does not say. Names and the beginning may be missing: an export leaves names out, and
     * a file without a beginning was given one when it came.
     *
     * @param source where they come from, such as a file's name
     */
    public Imported add(String source, Iterator<TurnStream> streams) {
        Told told = new Told(source, streams);
        List<Kept> kept = store.captures().add(told, (stream, capture) -> isSame(told.latest, capture));
        List<Long> captureIds = new ArrayList<>();
        List<Long> alreadyThere = new ArrayList<>();
        long turns = 0;
        for (int i = 0; i < kept.size(); i++) {
            if (kept.get(i).isNew()) {
                captureIds.add(kept.get(i).captureId());
                turns += told.turns.get(i);
            } else {
                alreadyThere.add(kept.get(i).captureId());
            }
        }
        return new Imported(captureIds, turns, alreadyThere);
    }

    private boolean isSame(TurnStream told, CaptureRow capture) {
        if (capture.kind() == CaptureKind.STREAM) {
            return saysNothingNew(told.header(), StreamHeader.read(capture.header()));
        }
        TurnStream heard = new Exporter(store).stream(capture, true);
        return saysNothingNew(told.header(), heard.header())
                && told.eventLines().equals(heard.eventLines());
    }

    private static boolean saysNothingNew(StreamHeader told, StreamHeader kept) {
        StreamHeader unstarted = new StreamHeader(
                kept.clock(),
                kept.origin(),
                kept.scramble(),
                told.started().isPresent() ? kept.started() : Optional.empty(),
                kept.truth());
        return told.equals(unstarted) || told.equals(unstarted.withoutNames());
    }

    /** The streams as the store keeps them, counted on the way. */
    private final class Told implements Iterator<ToldStream> {
        private final String source;
        private final Iterator<TurnStream> streams;
        private final List<Long> turns = new ArrayList<>();
        private TurnStream latest;

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
            latest = streams.next();
            turns.add(latest.events().stream()
                    .filter(Event.Turned.class::isInstance)
                    .count());
            return told(source, latest);
        }
    }

    /** A board whose clock nobody had set wrote 1970, one of 32 bits that went wrong 2106: no days of practice. */
    private static boolean isPossible(Instant started) {
        return !started.isBefore(EARLIEST) && started.isBefore(LATEST);
    }

    private ToldStream told(String source, TurnStream stream) {
        StreamHeader header = stream.header();
        StreamStart started = header.started()
                .orElseGet(() -> new StreamStart(clock.instant().truncatedTo(ChronoUnit.MILLIS), clock.getZone()));
        StreamHeader whole = new StreamHeader(
                header.clock(), header.origin(), header.scramble(), Optional.of(started), header.truth());
        List<String> lines = stream.eventLines();
        List<ToldEvent> events = new ArrayList<>();
        for (int i = 0; i < stream.events().size(); i++) {
            events.add(new ToldEvent(EventLines.kind(stream.events().get(i)), Event.VERSION, lines.get(i)));
        }
        CaptureStart start = new CaptureStart(
                UUID.randomUUID(),
                NO_BOOT,
                started.at(),
                isPossible(started.at()),
                0,
                started.zone(),
                header.origin(),
                source);
        return new ToldStream(start, whole.write(), header.truth(), events);
    }
}
