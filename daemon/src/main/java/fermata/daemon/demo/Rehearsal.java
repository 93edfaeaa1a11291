package fermata.daemon.demo;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.daemon.json.Json;
import fermata.daemon.turnfile.StreamClock;
import fermata.daemon.turnfile.StreamHeader;
import fermata.daemon.turnfile.TurnStream;
import fermata.decoder.stream.TurnSource;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import tools.jackson.databind.node.ObjectNode;

/** An evening of the made-up solver as a turn stream. Stateless. */
public final class Rehearsal {
    /** What the demo's cube is called. */
    public static final String CUBE = "galley cube";

    /** A scramble is read before it is turned. */
    private static final long READING_MICROS = 3_000_000;

    private Rehearsal() {}

    /**
     * Makes an evening up. Needs tables of some 20 MB and a second or two: not for a process that captures.
     *
     * @param solves how many attempts end solved
     * @param seed decides everything
     */
    public static TurnStream evening(int solves, long seed) {
        Evening evening =
                new VirtualCuber(CuberStyle.cook(), new SplittableRandom(seed)).evening(EveningPlan.ofSolves(solves));
        Origin origin =
                new Origin(CUBE, evening.cuber(), Hand.of(evening.hand().name().toLowerCase(java.util.Locale.ROOT)));
        StreamHeader header =
                new StreamHeader(StreamClock.DEVICE, origin, "", Optional.empty(), truth(evening, solves, seed));
        return new TurnStream(header, events(evening, origin));
    }

    private static String truth(Evening evening, int solves, long seed) {
        ObjectNode truth = Json.object();
        truth.put("kind", "rehearsal").put("seed", seed).put("solves", solves);
        ObjectNode whole = Json.tree(evening);
        truth.set("attempts", whole.get("attempts"));
        truth.set("others", whole.get("others"));
        return Json.write(truth);
    }

    private static List<Event> events(Evening evening, Origin origin) {
        Map<Integer, String> announcedBefore = new HashMap<>();
        for (AttemptTruth attempt : evening.attempts()) {
            if (attempt.scramble().announced()) {
                announcedBefore.put(
                        attempt.scramble().turns().from(), attempt.scramble().words());
            }
        }
        List<Event> events = new ArrayList<>();
        long latest = 0;
        for (int index = 0; index < evening.turns().size(); index++) {
            TimedTurn turn = evening.turns().get(index);
            if (announcedBefore.containsKey(index)) {
                long at = Math.max(latest, turn.atMicros() - READING_MICROS);
                events.add(new Event.Mark(MarkKind.SCRAMBLE, announcedBefore.get(index), origin, at));
            }
            events.add(new Event.Turned(turn.turn(), TurnSource.HEARD, origin, turn.atMicros()));
            latest = turn.atMicros();
        }
        return events;
    }
}
