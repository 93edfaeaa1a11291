package fermata.daemon.live;

import fermata.daemon.json.Json;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The parts of the live messages; docs/formats.md says what each member means. Stateless. */
final class LiveJson {
    private LiveJson() {}

    static ObjectNode link(LinkView link, OptionalInt battery, List<String> warnings) {
        ObjectNode node = Json.object();
        node.put("listening", link.listening()).put("reason", link.reason()).put("detail", link.detail());
        ArrayNode sentences = node.putArray("warnings");
        warnings.forEach(sentences::add);
        return battery.isPresent() ? node.put("battery_percent", battery.getAsInt()) : node.putNull("battery_percent");
    }

    static ObjectNode colours(Map<Face, String> colours) {
        ObjectNode node = Json.object();
        for (Face face : Face.values()) {
            node.put(face.name(), colours.get(face));
        }
        return node;
    }

    static ObjectNode cube(Optional<CubeState> relative) {
        ObjectNode node = Json.object();
        return relative.isPresent() ? node.put("facelets", relative.get().facelets()) : node.putNull("facelets");
    }

    static ObjectNode evening(LiveCourse evening) {
        ObjectNode node = Json.object();
        node.put("phase", evening.phase().name().toLowerCase(Locale.ROOT));
        evening.follower()
                .ifPresentOrElse(follower -> node.set("scramble", scramble(follower)), () -> node.putNull("scramble"));
        if (evening.phase() == LiveCourse.Phase.READY || evening.phase() == LiveCourse.Phase.SOLVING) {
            node.put("inspection_from_us", evening.inspectionFromMicros());
        } else {
            node.putNull("inspection_from_us");
        }
        if (evening.phase() == LiveCourse.Phase.SOLVING) {
            node.set("solve", solve(evening.solve()));
        } else {
            node.putNull("solve");
        }
        evening.last().ifPresentOrElse(last -> node.set("last", solve(last)), () -> node.putNull("last"));
        return node;
    }

    private static ObjectNode scramble(ScrambleFollower follower) {
        ObjectNode node = Json.object();
        node.set("turns", words(follower.scramble().turns()));
        ScramblePlace place = follower.place();
        node.put("done", place.done()).put("half", place.half());
        node.set("mending", words(place.mending()));
        return node.put("astray", place.astray());
    }

    private static ObjectNode solve(LiveSolve solve) {
        ObjectNode node = Json.object();
        node.put("turns", solve.turns().size()).put("whole", solve.whole());
        if (solve.whole()) {
            node.put("time_us", solve.turnMicros());
        } else {
            node.putNull("time_us");
        }
        node.put("inspection_us", solve.inspectionMicros());
        Optional<LiveSolve.Rest> rest = solve.longestRest();
        if (rest.isEmpty()) {
            return node.putNull("longest_rest");
        }
        node.putObject("longest_rest")
                .put("after_turn", rest.get().afterTurn())
                .put("length_us", rest.get().lengthMicros());
        return node;
    }

    /** The turns of a solve that runs, for whoever joins in its midst. */
    static ArrayNode turns(LiveSolve solve) {
        ArrayNode turns = Json.object().putArray("turns");
        for (LiveSolve.Timed timed : solve.turns()) {
            turns.addObject().put("turn", timed.turn().toString()).put("at_us", timed.atMicros());
        }
        return turns;
    }

    private static ArrayNode words(List<Turn> turns) {
        ArrayNode words = Json.object().putArray("turns");
        turns.forEach(turn -> words.add(turn.toString()));
        return words;
    }
}
