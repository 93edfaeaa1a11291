package fermata.daemon.web;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Makes a solve in the shape of {@code show --json} (docs/formats.md) from what a hand does, stage by stage, with times
 * from a seed. The start is whatever the words solve.
 */
final class WrittenScore {
    private static final Map<String, String> COLOURS =
            Map.of("U", "white", "R", "red", "F", "green", "D", "yellow", "L", "orange", "B", "blue");

    private final List<Map<String, Object>> turns = new ArrayList<>();
    private final List<Map<String, Object>> rotations = new ArrayList<>();
    private final List<Map<String, Object>> stages = new ArrayList<>();
    private final List<Map<String, Object>> rests = new ArrayList<>();
    private final List<Map<String, Object>> regrips = new ArrayList<>();
    private final List<Map<String, Object>> slips = new ArrayList<>();
    private final List<Map<String, Object>> gaps = new ArrayList<>();
    private final SplittableRandom random;
    private final List<Turn> core = new ArrayList<>();
    private Orientation hold = Orientation.IDENTITY;
    private boolean knowsHand = true;
    private long clock;
    private long stageStart;

    WrittenScore(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Turns the whole cube before the first turn. */
    WrittenScore heldBy(String rotation) {
        hold = Sequence.parse(rotation).walk(hold).end();
        return this;
    }

    /** Nothing is told of the hand, as where turns were lost. */
    WrittenScore withoutHand() {
        knowsHand = false;
        return this;
    }

    /** Waits; {@code fermata} null is a rest that nobody judged. */
    WrittenScore rest(long micros, Boolean fermata, Object... causesAndShares) {
        Map<String, Object> rest = new LinkedHashMap<>();
        rest.put("after_turn", turns.size() - 1);
        rest.put("start_us", clock);
        rest.put("length_us", micros);
        rest.put("excess_us", micros - 190_000);
        rest.put("p", 0.97);
        rest.put("called", micros >= 300_000);
        rest.put("fermata", fermata);
        List<Map<String, Object>> causes = new ArrayList<>();
        for (int at = 0; at < causesAndShares.length; at += 2) {
            causes.add(Map.of("cause", causesAndShares[at], "p", 0.86, "share_us", causesAndShares[at + 1]));
        }
        rest.put("causes", causes);
        rests.add(rest);
        clock += micros - 190_000;
        return this;
    }

    /** The fingers change before the next turn. */
    WrittenScore regrip(double probability) {
        regrips.add(Map.of("before_turn", turns.size(), "p", probability));
        return this;
    }

    /** The last so many turns took themselves back. */
    WrittenScore slip(int count) {
        slips.add(Map.of("from", turns.size() - count, "to", turns.size()));
        return this;
    }

    /** Turns are lost here. */
    WrittenScore lose(Integer count, long micros) {
        Map<String, Object> gap = new LinkedHashMap<>();
        gap.put("after_turn", turns.size() - 1);
        gap.put("start_us", clock);
        gap.put("end_us", clock + micros);
        gap.put("lost", count);
        gaps.add(gap);
        clock += micros - 190_000;
        return this;
    }

    /** What the hand does, and how sure that is. */
    WrittenScore turn(String words, double probability) {
        CoreWalk walk = Sequence.parse(words).walk(hold);
        List<Move> moves = Sequence.parse(words).moves();
        int done = -1;
        for (CoreStep step : walk.steps()) {
            rotate(moves.subList(done + 1, Math.max(done + 1, step.move())), probability);
            boolean together = step.move() == done;
            done = step.move();
            Move move = moves.get(step.move());
            if (step.turn().quarters() == 2) {
                Turn quarter = Turn.of(step.turn().face(), 1);
                add(quarter, halved(move), step.hold(), probability, together ? 14_000 : step());
                // The first quarter of a wide half turn has already tilted the cube by one.
                Orientation half = move instanceof Move.Wide wide
                        ? step.hold().then(Orientation.turning(wide.face(), 1))
                        : step.hold();
                add(quarter, halved(move), half, probability, 84_000);
            } else {
                add(step.turn(), move.written(), step.hold(), probability, together ? 14_000 : step());
            }
        }
        rotate(moves.subList(done + 1, moves.size()), probability);
        hold = walk.end();
        return this;
    }

    private static String halved(Move move) {
        return move instanceof Move.SliceTurn ? move.written() : move.letter();
    }

    private void rotate(List<Move> between, double probability) {
        if (!between.isEmpty() && !turns.isEmpty()) {
            Map<String, Object> rotation = new LinkedHashMap<>();
            rotation.put("before_turn", turns.size());
            rotation.put("rotation", new Sequence(between).toString());
            rotation.put("p", probability);
            rotations.add(rotation);
        }
    }

    private long step() {
        return turns.isEmpty() ? 0 : 165_000 + random.nextInt(60_000);
    }

    private void add(Turn turn, String hand, Orientation from, double probability, long after) {
        clock += after;
        core.add(turn);
        Map<String, Object> shown = new LinkedHashMap<>();
        shown.put("index", turns.size());
        shown.put("at_us", clock);
        shown.put("core", turn.toString());
        shown.put("source", turns.size() % 19 == 17 ? "repaired" : "heard");
        shown.put("hand", knowsHand ? hand : null);
        shown.put("hold", knowsHand ? from.letters() : null);
        shown.put("p", knowsHand ? probability : null);
        turns.add(shown);
    }

    /** Ends a stage. */
    WrittenScore stage(String name, String caseName, String faces) {
        Map<String, Object> stage = new LinkedHashMap<>();
        stage.put("name", name);
        stage.put("case", caseName);
        stage.put("faces", faces.isEmpty() ? List.of() : List.of(faces.split("")));
        stage.put("from", stages.isEmpty() ? 0 : stages.get(stages.size() - 1).get("to"));
        stage.put("to", turns.size());
        stage.put("start_us", stageStart);
        stage.put("end_us", clock);
        stage.put("parts", List.of());
        stages.add(stage);
        stageStart = clock;
        return this;
    }

    Map<String, Object> shown(String id, String method, String crossColour) {
        Map<String, Object> shown = new LinkedHashMap<>();
        shown.put("id", id);
        shown.put("day", "2026-11-24");
        shown.put("number", 41);
        shown.put("started_at", "2026-11-24T22:04:10");
        shown.put("hand", "left");
        shown.put("clock", "device");
        CubeState end = CubeState.SOLVED.apply(core);
        shown.put("scramble", null);
        shown.put("start_facelets", end.inverse().facelets());
        shown.put("face_colours", COLOURS);
        shown.put("solved", true);
        shown.put("outcome", "solved");
        shown.put("set_aside", false);
        shown.put("scramble_end", null);
        shown.put("time_us", clock);
        shown.put("gap_us", 9_300_000);
        shown.put("method", method);
        shown.put("cross_colour", crossColour);
        shown.put("turns", turns);
        shown.put("rotations", rotations);
        shown.put("stages", stages);
        shown.put("rests", rests);
        shown.put("gaps", gaps);
        shown.put("regrips", regrips);
        shown.put("looking", List.of());
        shown.put("slips", slips);
        shown.put("usual", null);
        Map<String, Object> holds = new LinkedHashMap<>();
        holds.put("known", knowsHand ? "inferred" : "untold");
        holds.put("weights", "made-up");
        holds.put("corrections", 0);
        holds.put("inferred", null);
        shown.put("holds", holds);
        return shown;
    }
}
