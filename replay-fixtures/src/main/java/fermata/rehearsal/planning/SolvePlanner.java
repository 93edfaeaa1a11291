package fermata.rehearsal.planning;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.CuberHabits;
import fermata.rehearsal.character.HandMirror;
import fermata.rehearsal.character.SeenState;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;

/**
 * Plans whole solves for a left hand. Not thread-safe. Cost: some 25 ms a solve, 1.3 s for the tables on first use.
 */
public final class SolvePlanner {
    /** What beginning with another side in front than usual has to save. */
    private static final int UNUSUAL_FRONT = 3;

    private final CrossPlanner crossPlanner;
    private final PairPlanner pairPlanner;
    private final Phrasing phrasing;
    private final CuberHabits habits;
    private final HandMirror mirror;
    private final LastLayerPlanner lastLayerPlanner;
    private final RandomGenerator random;

    private CubeState state = CubeState.SOLVED;
    private Orientation hold = Orientation.IDENTITY;

    public SolvePlanner(CuberHabits habits, HandMirror mirror, RandomGenerator random) {
        this.habits = habits;
        this.mirror = mirror;
        this.random = random;
        this.crossPlanner = new CrossPlanner(habits.handling());
        this.pairPlanner = new PairPlanner(habits.handling());
        this.phrasing = new Phrasing(habits.handling(), new Chance(random));
        this.lastLayerPlanner = new LastLayerPlanner(habits, mirror::of);
    }

    /** A solve of a state in the core frame. */
    public PlannedSolve plan(CubeState core) {
        Orientation start = startFor(core);
        state = SeenState.in(start, core);
        hold = Orientation.IDENTITY;
        List<PlannedStage> stages = new ArrayList<>();
        stages.add(oneLook("cross", "", crossPlanner.plan(state).moves()));
        while (stages.size() <= 4) {
            Set<Slot> before = PairPlanner.home(state);
            if (before.size() >= stages.size()) {
                stages.add(PlannedStage.done("pair" + stages.size()));
                continue;
            }
            List<Move> moves = phrasing.of(pairPlanner.plan(state, hold, noticed(before)));
            String name = "pair" + stages.size();
            PlannedStage stage = oneLook(name, "", moves);
            stages.add(new PlannedStage(name, newlyHome(start, before), stage.looks()));
        }
        stages.addAll(lastLayerPlanner.plan(SeenState.in(hold, state)));
        return new PlannedSolve(start, stages);
    }

    /** The hold, chosen while looking: the cross below, and of all its ways the easiest. */
    private Orientation startFor(CubeState core) {
        Orientation best = null;
        int least = Integer.MAX_VALUE;
        for (Orientation candidate : Orientation.all()) {
            if (habits.crossFaces().contains(mirror.of(candidate.coreAt(Face.D)))) {
                int price = crossPlanner.plan(SeenState.in(candidate, core)).price()
                        + (candidate.coreAt(Face.F) == Face.F ? 0 : UNUSUAL_FRONT);
                if (price < least) {
                    least = price;
                    best = candidate;
                }
            }
        }
        return best;
    }

    /** Of the pairs that are not home, as many as this solver looks at before choosing. */
    private Set<Slot> noticed(Set<Slot> home) {
        List<Slot> open = new ArrayList<>(EnumSet.complementOf(copyOf(home)));
        for (int place = open.size() - 1; place > 0; place--) {
            Collections.swap(open, place, random.nextInt(place + 1));
        }
        return EnumSet.copyOf(open.subList(0, Math.min(open.size(), habits.pairsNoticed())));
    }

    private static EnumSet<Slot> copyOf(Set<Slot> slots) {
        EnumSet<Slot> copy = EnumSet.noneOf(Slot.class);
        copy.addAll(slots);
        return copy;
    }

    private String newlyHome(Orientation start, Set<Slot> before) {
        EnumSet<Slot> now = copyOf(PairPlanner.home(state));
        now.removeAll(before);
        StringBuilder names = new StringBuilder();
        for (Slot slot : now) {
            names.append(names.isEmpty() ? "" : "+").append(slot.edgeIn(start));
        }
        return names.toString();
    }

    private PlannedStage oneLook(String name, String caseName, List<Move> moves) {
        CoreWalk walk = new Sequence(moves).walk(hold);
        state = state.apply(walk.turns());
        hold = walk.end();
        return new PlannedStage(name, caseName, moves.isEmpty() ? List.of() : List.of(moves));
    }
}
