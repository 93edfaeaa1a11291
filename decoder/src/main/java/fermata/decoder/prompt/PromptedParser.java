package fermata.decoder.prompt;

import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.stream.RawFrame;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads a recording's lines, first to last. One use. */
public final class PromptedParser {
    private static final JsonMapper JSON = JsonMapper.shared();

    private static final String UUID_SHAPE = "[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}";

    /** A year: what is longer is no drill. */
    private static final long MAX_MICROS = 365L * 86_400_000_000L;

    /** Carries the first problem out of the lines; never leaves this class. */
    private static final class Wrong extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final transient PromptedProblem problem;

        Wrong(PromptedProblem problem) {
            super(problem.message());
            this.problem = problem;
        }
    }

    private final List<Prompt> prompts = new ArrayList<>();
    private final List<RawFrame> values = new ArrayList<>();
    private final List<UUID> services = new ArrayList<>();
    private Optional<String> device = Optional.empty();
    private boolean bonded;
    private long endMicros = -1;
    private long lastMicros;
    private int line;

    private PromptedParser() {}

    /** Reads a whole recording; never throws for what the lines say. Linear in the text. */
    public static PromptedReading parse(Stream<String> lines) {
        PromptedParser parser = new PromptedParser();
        try {
            lines.forEachOrdered(parser::take);
            return new PromptedReading.Usable(parser.finished());
        } catch (Wrong wrong) {
            return new PromptedReading.Unusable(wrong.problem);
        }
    }

    private void take(String text) {
        line++;
        if (text.isBlank()) {
            return;
        }
        JsonNode node = json(text);
        if (device.isEmpty()) {
            header(node);
        } else if (node.has("format")) {
            throw wrong("format", node.get("format"), "one recording of one device in a file");
        } else if (endMicros >= 0) {
            throw wrong("line", node, "nothing after the line that ends the recording");
        } else if (node.has("prompt")) {
            prompts.add(new Prompt(step(node), at(node)));
        } else if (node.has("value")) {
            values.add(value(node));
        } else if (node.has("end")) {
            endMicros = at(node);
        } else {
            throw wrong("line", node, "a prompt, a value or the end");
        }
    }

    private PromptedRecording finished() {
        if (device.isEmpty()) {
            throw wrong("format", "nothing", '"' + PromptedText.FORMAT + '"');
        }
        if (endMicros < 0) {
            throw wrong("end", "nothing", "a last line {\"end\":true,...}: the recording was cut");
        }
        if (prompts.isEmpty()) {
            throw wrong("prompt", "nothing", "prompts: without them nothing says what was turned");
        }
        return new PromptedRecording(device.get(), services, bonded, prompts, values, endMicros);
    }

    private JsonNode json(String text) {
        try {
            JsonNode node = JSON.readTree(text);
            if (node.isObject()) {
                return node;
            }
        } catch (JacksonException e) {
            throw wrong("line", cut(text), "one JSON object: " + e.getOriginalMessage());
        }
        throw wrong("line", cut(text), "one JSON object");
    }

    private void header(JsonNode node) {
        if (!PromptedText.FORMAT.equals(node.path("format").asString(""))) {
            throw wrong("format", node.path("format"), '"' + PromptedText.FORMAT + '"');
        }
        if (node.path("version").asInt(0) != PromptedText.VERSION) {
            throw wrong("version", node.path("version"), Integer.toString(PromptedText.VERSION));
        }
        if (!node.path("device").isString()) {
            throw wrong("device", node.path("device"), "the device's name, \"\" if it has none");
        }
        for (JsonNode service : node.path("services")) {
            services.add(uuid("services", service));
        }
        bonded = node.path("bonded").asBoolean(false);
        device = Optional.of(node.get("device").stringValue());
    }

    private PromptStep step(JsonNode node) {
        String kind = node.get("prompt").asString("");
        return switch (kind) {
            case "solved" -> new PromptStep.BeginSolved();
            case "single" -> new PromptStep.TurnFaces(turns(node), Pace.SINGLE);
            case "half" -> new PromptStep.TurnFaces(turns(node), Pace.HALF);
            case "run" -> new PromptStep.TurnFaces(turns(node), Pace.RUN);
            case "rest" -> new PromptStep.Rest();
            case "tilt" ->
                new PromptStep.Tilt(matching(node, "rotation", "[xyz][2']?", "x, y or z, alone or with 2 or '"));
            case "free" -> new PromptStep.Free();
            default -> throw wrong("prompt", node.get("prompt"), "one of solved, single, half, run, rest, tilt, free");
        };
    }

    private List<Turn> turns(JsonNode node) {
        String text = matching(node, "turns", "[URFDLB][2']?( [URFDLB][2']?)*", "face turns with blanks between");
        return Stream.of(text.split(" ")).map(Turn::parse).toList();
    }

    private RawFrame value(JsonNode node) {
        String hex =
                matching(node, "value", "([0-9a-fA-F]{2}){0,512}", "up to 512 bytes as pairs of hexadecimal digits");
        JsonNode connection = node.path("connection");
        if (!connection.isMissingNode() && !connection.isInt()) {
            throw wrong("connection", connection, "a whole number");
        }
        UUID characteristic = uuid("characteristic", node.path("characteristic"));
        return new RawFrame(
                connection.asInt(0),
                characteristic,
                at(node) * 1000,
                HexFormat.of().parseHex(hex));
    }

    private String matching(JsonNode node, String member, String shape, String expected) {
        String text = node.path(member).asString("");
        if (!node.path(member).isString() || !text.matches(shape)) {
            throw wrong(member, node.path(member), expected);
        }
        return text;
    }

    private UUID uuid(String member, JsonNode node) {
        if (!node.isString() || !node.stringValue().matches(UUID_SHAPE)) {
            throw wrong(member, node, "a UUID in the form 8-4-4-4-12");
        }
        return UUID.fromString(node.stringValue());
    }

    private long at(JsonNode node) {
        JsonNode at = node.path("at");
        boolean fits = at.isIntegralNumber() && at.canConvertToLong();
        if (!fits || at.longValue() < lastMicros || at.longValue() > MAX_MICROS) {
            throw wrong("at", at, "microseconds since the recording began, not below the line before: " + lastMicros);
        }
        lastMicros = at.longValue();
        return lastMicros;
    }

    private Wrong wrong(String member, JsonNode found, String expected) {
        return wrong(member, found.isMissingNode() ? "nothing" : cut(found.toString()), expected);
    }

    private Wrong wrong(String member, String found, String expected) {
        return new Wrong(new PromptedProblem(line, member, found, expected));
    }

    private static String cut(String text) {
        return text.length() <= 80 ? text : text.substring(0, 77) + "...";
    }
}
