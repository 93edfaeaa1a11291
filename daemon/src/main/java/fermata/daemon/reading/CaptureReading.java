package fermata.daemon.reading;

import fermata.analysis.event.CaptureLog;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.Face;
import java.util.Map;
import java.util.Objects;

/**
 * A capture, read into events.
 *
 * @param log its events
 * @param clock what their times rest on
 * @param faceColours the colours of the cube's centres
 * @param tally what became of its frames
 */
public record CaptureReading(CaptureLog log, StreamClock clock, Map<Face, String> faceColours, Tally tally) {
    /** The colours of the usual cube, for streams that do not say. */
    static final Map<Face, String> USUAL_COLOURS =
            Map.of(Face.U, "white", Face.R, "red", Face.F, "green", Face.D, "yellow", Face.L, "orange", Face.B, "blue");

    public CaptureReading {
        Objects.requireNonNull(log, "log");
        Objects.requireNonNull(clock, "clock");
        faceColours = Map.copyOf(faceColours);
        Objects.requireNonNull(tally, "tally");
    }
}
