package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.reading.CaptureReading;
import fermata.daemon.reading.ToldReading;
import fermata.daemon.store.CaptureKind;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Store;
import fermata.daemon.turnfile.StreamHeader;
import fermata.daemon.turnfile.StreamHeader.StreamStart;
import fermata.daemon.turnfile.TurnStream;
import java.util.List;
import java.util.Optional;

/** Makes turn streams of captures: what was imported comes out as it went in, what was heard as it is decoded. */
public final class Exporter {
    private final Store store;
    private final CaptureReader reader;

    public Exporter(Store store) {
        this.store = store;
        this.reader = new CaptureReader(store.captures());
    }

    /**
     * The stream of a capture.
     *
     * @param withNames whether the names of cube and solver go along
     */
    public TurnStream stream(CaptureRow capture, boolean withNames) {
        TurnStream stream = capture.kind() == CaptureKind.STREAM ? told(capture) : heard(capture);
        return withNames ? stream : new TurnStream(stream.header().withoutNames(), stream.events());
    }

    private TurnStream told(CaptureRow capture) {
        StreamHeader header = StreamHeader.read(capture.header());
        List<Event> events =
                ToldReading.events(capture, header.clock(), store.captures().events(capture.id()));
        return new TurnStream(header, events);
    }

    private TurnStream heard(CaptureRow capture) {
        CaptureReading reading = reader.read(capture);
        StreamHeader header = new StreamHeader(
                reading.clock(),
                capture.start().origin(),
                "",
                Optional.of(capture.start())
                        .filter(CaptureStart::isDated)
                        .map(start -> new StreamStart(start.startedWall(), start.zone())),
                capture.truth());
        return new TurnStream(header, reading.log().events());
    }
}
