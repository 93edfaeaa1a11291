package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.analysis.event.Ruling;
import fermata.daemon.json.Json;
import fermata.daemon.json.JsonLine;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Legality;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.TurnSource;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Events as lines of a turn stream, one way and the other. An event and its line say the same; a verdict names the
 * first turn of its attempt, because the number of a capture differs from store to store.
 *
 * <p>Immutable.
 */
public final class EventLines {
    /** A hundred years of 365.25 days: with any beginning that a header may name, a day that can be written. */
    private static final long LONGEST_MICROS = 3_155_760_000_000_000L;

    private final String captureId;
    private final Origin origin;
    private final boolean timed;

    /**
     * @param captureId the capture whose attempts verdicts are about
     * @param origin what every event belongs to
     * @param clock whether lines have times
     */
    public EventLines(String captureId, Origin origin, StreamClock clock) {
        this.captureId = captureId;
        this.origin = origin;
        this.timed = clock != StreamClock.NONE;
    }

    /** The one of the ten words that an event's line begins with. */
    public static String kind(Event event) {
        return event.visit(LineKind.OF_EVENT).written();
    }

    /** Reads a line. */
    public Event read(JsonLine line) {
        LineKind kind = LineKind.of(line);
        long at = at(line);
        return switch (kind) {
            case TURN ->
                new Event.Turned(
                        line.read("turn", "a turn such as R, R2 or R'", Turn::parse), source(line), origin, at);
            case GAP -> new Event.Gap(count(line), origin, at);
            case SNAPSHOT -> new Event.Snapshot(state(line, "snapshot"), origin, at);
            case REFERENCE -> new Event.Reference(state(line, "reference"), origin, at);
            case MARK -> mark(line, at);
            case HAND -> hand(line, at);
            case ORIENTATION -> orientation(line, at);
            case CALIBRATION -> CalibrationLine.read(line, origin, at);
            case SEQUENCES -> SequencesLine.read(line, origin, at);
            case VERDICT -> verdict(line, at);
        };
    }

    private long at(JsonLine line) {
        if (!timed) {
            if (line.mentions("at")) {
                throw line.bad("at", "no such member, since the header says that there is no clock");
            }
            return Event.NO_TIME;
        }
        long at = line.optionalWhole("at", 0).orElseThrow(() -> line.bad("at", "microseconds since the stream began"));
        if (at > LONGEST_MICROS) {
            throw line.bad(
                    "at", "microseconds since the stream began, at most " + LONGEST_MICROS + ", a hundred years");
        }
        return at;
    }

    private static TurnSource source(JsonLine line) {
        if (!line.has("source")) {
            return TurnSource.HEARD;
        }
        return TurnSource.valueOf(
                line.oneOf("source", words(TurnSource.values())).toUpperCase(Locale.ROOT));
    }

    private static int count(JsonLine line) {
        if (line.object().get("gap").isString()
                && line.object().get("gap").stringValue().equals(LineMembers.UNKNOWN_COUNT)) {
            return Event.Gap.UNKNOWN_COUNT;
        }
        String expected = "how many turns were lost, from 1, or \"" + LineMembers.UNKNOWN_COUNT + "\"";
        if (!line.object().get("gap").canConvertToInt()) {
            throw line.bad("gap", expected);
        }
        int count = line.object().get("gap").intValue();
        if (count < 1) {
            throw line.bad("gap", expected);
        }
        return count;
    }

    private static CubeState state(JsonLine line, String field) {
        CubeState state = line.read(field, "54 letters of URFDLB that make a cube", Facelets::read);
        if (state.legality() != Legality.LEGAL) {
            throw line.bad(
                    field,
                    "a cube that turning can reach, but " + state.legality().reason());
        }
        return state;
    }

    private Event mark(JsonLine line, long at) {
        MarkKind kind =
                MarkKind.valueOf(line.oneOf("mark", words(MarkKind.values())).toUpperCase(Locale.ROOT));
        String text = line.optionalText("text").orElse("");
        if (kind == MarkKind.SCRAMBLE) {
            line.read("text", "moves in WCA notation", EventLines::scramble);
        }
        return new Event.Mark(kind, text, origin, at);
    }

    private static Sequence scramble(String words) {
        if (words.isBlank()) {
            throw new IllegalArgumentException("there is no move in it");
        }
        return Sequence.parse(words);
    }

    private Event verdict(JsonLine line, long at) {
        Ruling ruling =
                Ruling.valueOf(line.oneOf("verdict", words(Ruling.values())).toUpperCase(Locale.ROOT));
        return new Event.Verdict(attemptId(line), ruling, origin, at);
    }

    private Event hand(JsonLine line, long at) {
        if (!line.text("hand").isEmpty()) {
            line.read("hand", "moves in WCA notation", Sequence::parse);
        }
        return new Event.HandStated(attemptId(line), line.text("hand"), origin, at);
    }

    private Event orientation(JsonLine line, long at) {
        String expected = "four numbers w, x, y, z that make a quaternion of length 1";
        if (!timed) {
            throw line.bad("orientation", "no such line, since the header says that there is no clock");
        }
        JsonNode list = line.object().get("orientation");
        if (!list.isArray() || list.size() != 4 || !list.valueStream().allMatch(JsonNode::isNumber)) {
            throw line.bad("orientation", expected);
        }
        // What is beyond all doubles becomes infinite, which is no length of 1.
        double[] parts = list.valueStream()
                .map(JsonNode::decimalValue)
                .mapToDouble(BigDecimal::doubleValue)
                .toArray();
        try {
            return new Event.Oriented(new Quaternion(parts[0], parts[1], parts[2], parts[3]), origin, at);
        } catch (IllegalArgumentException e) {
            throw line.bad("orientation", expected + " (" + e.getMessage() + ")");
        }
    }

    private String attemptId(JsonLine line) {
        return captureId + "-"
                + line.optionalWhole("first_turn", 0)
                        .orElseThrow(
                                () -> line.bad("first_turn", "the number of the attempt's first turn in this stream"));
    }

    private static List<String> words(Enum<?>[] values) {
        return Arrays.stream(values)
                .map(value -> value.name().toLowerCase(Locale.ROOT))
                .toList();
    }

    /** The line of an event. */
    public String write(Event event) {
        ObjectNode node = event.visit(LineMembers.OF_EVENT);
        if (timed && event.isTimed()) {
            node.put("at", event.atMicros());
        }
        return Json.write(node);
    }
}
