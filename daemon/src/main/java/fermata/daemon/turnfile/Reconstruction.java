package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.json.Json;
import fermata.daemon.json.JsonLine;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A written solve, read as the turns that the centres would have felt. What the writer says of the hand and of the
 * stages is kept beside it as truth; nothing of it goes into the events.
 */
final class Reconstruction {
    static final List<String> HANDS = List.of("one", "two", "unknown");

    private final JsonLine line;
    private final List<Event> events = new ArrayList<>();
    private final ArrayNode holds;
    private final ArrayNode stages;
    private Orientation hold = Orientation.IDENTITY;
    private int turns;

    private Reconstruction(JsonLine line, ObjectNode truth) {
        this.line = line;
        this.holds = truth.putArray("holds");
        this.stages = truth.putArray("stages");
    }

    /** Whether a line looks like one. */
    static boolean is(JsonLine line) {
        return line.mentions("scramble") && line.mentions("lines");
    }

    /** Reads one. */
    static TurnStream read(JsonLine line) {
        String hands = line.oneOf("hands", HANDS);
        // "one" does not say which: that is not known, and must not be guessed.
        Origin origin = new Origin("unknown", "unknown", hands.equals("two") ? Hand.TWO : Hand.UNKNOWN);
        Sequence scramble = line.read("scramble", "moves in WCA notation", Sequence::parse);
        if (scramble.walk(Orientation.IDENTITY).turns().isEmpty()) {
            throw line.bad("scramble", "at least one turn");
        }
        ObjectNode truth = Json.object();
        truth.put("kind", "reconstruction");
        for (String field : List.of("id", "hands", "method", "time_s", "note", "group", "source")) {
            if (line.has(field)) {
                truth.set(field, line.object().get(field));
            }
        }
        Reconstruction reading = new Reconstruction(line, truth);
        reading.events.add(new Event.Snapshot(scramble.state(), origin, Event.NO_TIME));
        reading.readLines(origin);
        StreamHeader header =
                new StreamHeader(StreamClock.NONE, origin, line.text("scramble"), Optional.empty(), Json.write(truth));
        return new TurnStream(header, reading.events);
    }

    private void readLines(Origin origin) {
        addHold();
        line.objects("lines").forEach(written -> readWrittenLine(written, origin));
        if (turns == 0) {
            throw line.bad("lines", "at least one turn");
        }
    }

    private void readWrittenLine(JsonLine written, Origin origin) {
        Sequence moves = written.read("moves", "moves in WCA notation", Sequence::parse);
        ObjectNode stage = stages.addObject();
        stage.put("stage", written.text("stage"));
        written.optionalText("sub").ifPresent(sub -> stage.put("sub", sub));
        stage.put("from", turns);
        CoreWalk walk = moves.walk(hold);
        for (CoreStep step : walk.steps()) {
            setHold(step.hold());
            events.add(new Event.Turned(step.turn(), TurnSource.HEARD, origin, Event.NO_TIME));
            turns++;
        }
        setHold(walk.end());
        stage.put("to", turns);
    }

    private void setHold(Orientation next) {
        if (next != hold) {
            hold = next;
            addHold();
        }
    }

    /** Says from which turn on the cube is held so; a later word about the same turn takes the earlier one's place. */
    private void addHold() {
        if (!holds.isEmpty() && holds.get(holds.size() - 1).get("turn").intValue() == turns) {
            holds.remove(holds.size() - 1);
        }
        holds.addObject().put("turn", turns).put("hold", hold.letters());
    }
}
