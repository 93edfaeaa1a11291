package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.JsonLine;
import fermata.decoder.notation.Sequence;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A solver's own sequences as a line of a turn stream. Stateless. */
final class SequencesLine {
    static final String KIND = "sequences";

    private SequencesLine() {}

    static Event read(JsonLine line, Origin origin, long at) {
        JsonNode list = line.object().get(KIND);
        if (!list.isArray()) {
            throw line.bad(KIND, "a list of sequences in WCA notation");
        }
        List<String> sequences = new ArrayList<>();
        for (int place = 0; place < list.size(); place++) {
            sequences.add(sequence(line, place, list.get(place)));
        }
        return new Event.SequencesStated(sequences, origin, at);
    }

    private static String sequence(JsonLine line, int place, JsonNode node) {
        String problem = "";
        if (node.isString()) {
            try {
                return Sequence.parse(node.stringValue()).toString();
            } catch (IllegalArgumentException e) {
                problem = " (" + e.getMessage() + ")";
            }
        }
        throw new BadLineException(
                line.file(),
                line.number(),
                line.path() + KIND + "[" + place + "]",
                node.toString(),
                "a sequence in WCA notation" + problem);
    }

    static void write(Event.SequencesStated stated, ObjectNode node) {
        ArrayNode sequences = node.putArray(KIND);
        stated.sequences().forEach(sequences::add);
    }
}
