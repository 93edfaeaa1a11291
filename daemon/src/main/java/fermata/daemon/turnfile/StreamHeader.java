package fermata.daemon.turnfile;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.json.Json;
import fermata.daemon.json.JsonLine;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The first line of a turn stream.
 *
 * @param clock what the times rest on
 * @param origin cube, solver and hand
 * @param scramble the announced words in WCA notation; empty if none were
 * @param started when it began and whose midnights count; empty if the file does not say
 * @param truth what is known of it from elsewhere, a JSON object on one line; empty if nothing is
 */
public record StreamHeader(
        StreamClock clock, Origin origin, String scramble, Optional<StreamStart> started, String truth) {
    /** The word that names the format. */
    public static final String FORMAT = "turn-stream";
    /** The version that this program reads and writes. */
    public static final int VERSION = 1;

    private static final String UNKNOWN = "unknown";

    /** Days outside would not be written with four digits of a year, or not be days at all. */
    private static final Instant EARLIEST = Instant.parse("1900-01-01T00:00:00Z");

    private static final Instant LATEST = Instant.parse("3000-01-01T00:00:00Z");

    /**
     * When a stream began.
     *
     * @param at civil time
     * @param zone whose midnights its practice days follow
     */
    public record StreamStart(Instant at, ZoneId zone) {
        public StreamStart {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(zone, "zone");
        }
    }

    public StreamHeader {
        Objects.requireNonNull(clock, "clock");
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(scramble, "scramble");
        Objects.requireNonNull(started, "started");
        Objects.requireNonNull(truth, "truth");
    }

    /** Whether a line is a header. */
    static boolean is(JsonLine line) {
        return line.mentions("format");
    }

    /** Reads a header that is stored as {@link #write()} made it. */
    public static StreamHeader read(String stored) {
        return read(JsonLine.parse("the stored header", 1, stored));
    }

    /** Reads a header. */
    static StreamHeader read(JsonLine line) {
        if (!FORMAT.equals(line.text("format"))) {
            throw line.bad("format", "\"" + FORMAT + "\"");
        }
        if (line.optionalWhole("version", 1).orElseThrow(() -> line.bad("version", "1")) != VERSION) {
            throw line.bad("version", "1: the only version that this fermata reads");
        }
        StreamClock clock = StreamClock.of(line.oneOf("clock", StreamClock.WORDS));
        Hand hand = Hand.of(line.oneOf(
                "hand", Arrays.stream(Hand.values()).map(Hand::written).toList()));
        Origin origin = new Origin(name(line, "cube"), name(line, "solver"), hand);
        String scramble =
                line.has("scramble") ? line.read("scramble", "moves in WCA notation", StreamHeader::scramble) : "";
        return new StreamHeader(clock, origin, scramble, start(line), truth(line));
    }

    private static String name(JsonLine line, String field) {
        String name = line.optionalText(field).orElse(UNKNOWN);
        if (name.isBlank()) {
            throw line.bad(field, "a name, or no such member");
        }
        return name;
    }

    private static String scramble(String words) {
        if (Sequence.parse(words).walk(Orientation.IDENTITY).turns().isEmpty()) {
            throw new IllegalArgumentException("there is no turn in it");
        }
        return words;
    }

    private static Optional<StreamStart> start(JsonLine line) {
        if (!line.has("started_at")) {
            return Optional.empty();
        }
        Instant at = line.read(
                "started_at",
                "a moment from 1900 to 2999, such as 2026-11-24T20:04:05Z",
                text -> timed(Instant::parse, text));
        if (at.isBefore(EARLIEST) || !at.isBefore(LATEST)) {
            throw line.bad("started_at", "a moment from 1900 to 2999, such as 2026-11-24T20:04:05Z");
        }
        ZoneId zone = line.has("zone")
                ? line.read("zone", "a time zone such as Europe/Oslo", text -> timed(ZoneId::of, text))
                : ZoneOffset.UTC;
        return Optional.of(new StreamStart(at, zone));
    }

    private static <T> T timed(Function<String, T> reading, String text) {
        try {
            return reading.apply(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    private static String truth(JsonLine line) {
        JsonNode truth = line.object().path("truth");
        if (truth.isMissingNode() || truth.isNull()) {
            return "";
        }
        if (!truth.isObject()) {
            throw line.bad("truth", "a JSON object");
        }
        return Json.write(truth);
    }

    /** The line. Members that say nothing are left out. */
    public String write() {
        ObjectNode node = Json.object();
        node.put("format", FORMAT);
        node.put("version", VERSION);
        node.put("clock", clock.written());
        node.put("hand", origin.hand().written());
        putKnown(node, "cube", origin.cube());
        putKnown(node, "solver", origin.solver());
        if (!scramble.isEmpty()) {
            node.put("scramble", scramble);
        }
        started.ifPresent(start -> {
            node.put("started_at", start.at().toString());
            node.put("zone", start.zone().getId());
        });
        if (!truth.isEmpty()) {
            node.set("truth", Json.read(truth));
        }
        return Json.write(node);
    }

    private static void putKnown(ObjectNode node, String field, String name) {
        if (!name.equals(UNKNOWN)) {
            node.put(field, name);
        }
    }

    /** The same without the names of cube and solver. */
    public StreamHeader withoutNames() {
        return new StreamHeader(clock, new Origin(UNKNOWN, UNKNOWN, origin.hand()), scramble, started, truth);
    }
}
