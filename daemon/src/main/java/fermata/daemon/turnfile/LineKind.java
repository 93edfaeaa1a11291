package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.daemon.json.JsonLine;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** The kinds of lines in a turn stream: the member that a line of the kind begins with, and the event it tells of. */
enum LineKind {
    TURN("turn"),
    GAP("gap"),
    SNAPSHOT("snapshot"),
    REFERENCE("reference"),
    MARK("mark"),
    VERDICT("verdict"),
    HAND("hand"),
    ORIENTATION("orientation"),
    CALIBRATION(CalibrationLine.KIND),
    SEQUENCES(SequencesLine.KIND);

    /** The kind of an event's line. */
    static final Event.Visitor<LineKind> OF_EVENT = new OfEvent();

    private final String written;

    LineKind(String written) {
        this.written = written;
    }

    /** The member's name. */
    String written() {
        return written;
    }

    /** The kind of a line that has exactly one of the members. */
    static LineKind of(JsonLine line) {
        List<LineKind> kinds =
                Arrays.stream(values()).filter(kind -> line.has(kind.written)).toList();
        if (kinds.size() != 1) {
            throw line.bad("exactly one of the members "
                    + Arrays.stream(values()).map(LineKind::written).collect(Collectors.joining(", ")));
        }
        return kinds.get(0);
    }

    private static final class OfEvent implements Event.Visitor<LineKind> {
        @Override
        public LineKind turned(Event.Turned turned) {
            return TURN;
        }

        @Override
        public LineKind gap(Event.Gap gap) {
            return GAP;
        }

        @Override
        public LineKind snapshot(Event.Snapshot snapshot) {
            return SNAPSHOT;
        }

        @Override
        public LineKind reference(Event.Reference reference) {
            return REFERENCE;
        }

        @Override
        public LineKind mark(Event.Mark mark) {
            return MARK;
        }

        @Override
        public LineKind verdict(Event.Verdict verdict) {
            return VERDICT;
        }

        @Override
        public LineKind handStated(Event.HandStated stated) {
            return HAND;
        }

        @Override
        public LineKind calibrated(Event.Calibrated calibrated) {
            return CALIBRATION;
        }

        @Override
        public LineKind sequencesStated(Event.SequencesStated stated) {
            return SEQUENCES;
        }

        @Override
        public LineKind oriented(Event.Oriented oriented) {
            return ORIENTATION;
        }
    }
}
