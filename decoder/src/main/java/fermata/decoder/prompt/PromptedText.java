package fermata.decoder.prompt;

import fermata.decoder.prompt.PromptStep.BeginSolved;
import fermata.decoder.prompt.PromptStep.Free;
import fermata.decoder.prompt.PromptStep.Rest;
import fermata.decoder.prompt.PromptStep.Tilt;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.stream.RawFrame;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** A recording as JSON lines, a line at a time so that it can be written while it goes on. Stateless. */
public final class PromptedText {
    /** What the header calls the format. */
    static final String FORMAT = "prompted-recording";

    static final int VERSION = 1;

    private static final JsonMapper JSON = JsonMapper.shared();

    private PromptedText() {}

    /** All lines of a recording: the header, prompts and values by time, the end. */
    public static List<String> lines(PromptedRecording recording) {
        List<String> lines = new ArrayList<>();
        lines.add(header(recording));
        int shown = 0;
        for (RawFrame value : recording.values()) {
            while (shown < recording.prompts().size()
                    && recording.prompts().get(shown).atMicros() <= value.arrivalMicros()) {
                lines.add(prompt(recording.prompts().get(shown++)));
            }
            lines.add(value(value));
        }
        recording.prompts().subList(shown, recording.prompts().size()).forEach(prompt -> lines.add(prompt(prompt)));
        lines.add(end(recording.endMicros()));
        return lines;
    }

    /** The first line, of what is known of the device. */
    public static String header(PromptedRecording recording) {
        ObjectNode node = JSON.createObjectNode();
        node.put("format", FORMAT).put("version", VERSION).put("device", recording.device());
        recording.services().forEach(service -> node.withArray("services").add(service.toString()));
        return (recording.bonded() ? node.put("bonded", true) : node).toString();
    }

    /** A prompt's line. */
    public static String prompt(Prompt prompt) {
        ObjectNode node = JSON.createObjectNode();
        PromptStep step = prompt.step();
        if (step instanceof BeginSolved) {
            node.put("prompt", "solved");
        } else if (step instanceof TurnFaces faces) {
            node.put("prompt", faces.pace().name().toLowerCase(Locale.ROOT));
            node.put("turns", faces.turns().stream().map(Object::toString).collect(Collectors.joining(" ")));
        } else if (step instanceof Rest) {
            node.put("prompt", "rest");
        } else if (step instanceof Tilt tilt) {
            node.put("prompt", "tilt").put("rotation", tilt.rotation());
        } else if (step instanceof Free) {
            node.put("prompt", "free");
        }
        return node.put("at", prompt.atMicros()).toString();
    }

    /** A value's line. */
    public static String value(RawFrame value) {
        return JSON.createObjectNode()
                .put("value", HexFormat.of().formatHex(value.bytes()))
                .put("characteristic", value.characteristic().toString())
                .put("connection", value.connection())
                .put("at", value.arrivalMicros())
                .toString();
    }

    /** The last line: without it a recording was cut. */
    public static String end(long atMicros) {
        return JSON.createObjectNode().put("end", true).put("at", atMicros).toString();
    }
}
