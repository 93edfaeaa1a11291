package fermata.rehearsal;

import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.solver.RandomStates;
import fermata.decoder.solver.TwoPhaseSolver;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.HandMirror;
import fermata.rehearsal.planning.PlannedSolve;
import fermata.rehearsal.planning.SolvePlanner;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.OtherTruth;
import fermata.rehearsal.truth.ScrambleTruth;
import fermata.rehearsal.truth.SolveTruth;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;

/**
 * A made-up one-handed solver in the galley of a small ferry, between crossings.
 *
 * <p>Everything comes from the generator handed in: the same style, seed and plan give the same evening. Cost: about
 * 30 ms a solve, and a second or two for 10 MB of tables on first use. Not thread-safe.
 */
public final class VirtualCuber {
    private static final List<String> NOTES = List.of(
            "before the last crossing",
            "kettle on, ramp up",
            "moored, engine off",
            "between the four and the five o'clock boat",
            "galley table wiped, cups away",
            "waiting for the fog to lift",
            "soup on the small flame",
            "last car off");
    private static final List<String> IDLE_WORDS =
            List.of("R U R' U' R U R' U' R U R' U' R U R' U' R U R' U' R U R' U'", "U U U U", "R U U' R'", "F R R' F'");

    private static final double PICK_UP_MICROS = 5_000_000;
    private static final double GAP_MICROS = 9_000_000;
    private static final double PAUSE_MICROS = 22_000_000;
    private static final double SCRAMBLE_TURN_MICROS = 310_000;
    private static final double SECOND_QUARTER_MICROS = 170_000;
    private static final double WAIT_SPREAD = 0.3;
    /** A tired hand gets this much slower and no more. */
    private static final double SLOWEST = 1.1;

    private static final int LAST_STAGE_ABANDONED = 5;

    private final CuberStyle style;
    private final HandMirror mirror;
    private final Chance chance;
    private final SolvePlanner planner;
    private final TwoPhaseSolver scrambler = new TwoPhaseSolver();

    public VirtualCuber(CuberStyle style, RandomGenerator random) {
        this.style = Objects.requireNonNull(style, "style");
        this.mirror = HandMirror.before(style.hand());
        this.chance = new Chance(random);
        this.planner = new SolvePlanner(style.habits(), mirror, random);
    }

    /** An evening that begins with a solved cube and ends when the planned number of solves is done. */
    public Evening evening(EveningPlan plan) {
        Tape tape = new Tape();
        List<AttemptTruth> attempts = new ArrayList<>();
        List<OtherTruth> others = new ArrayList<>();
        int solved = 0;
        tape.pass(chance.around(PICK_UP_MICROS, WAIT_SPREAD));
        while (solved < plan.solves()) {
            AttemptTruth attempt = attempt(plan, tape, attempts.size() + 1);
            attempts.add(attempt);
            solved += attempt.solve().solved() ? 1 : 0;
            tape.pass(chance.around(PAUSE_MICROS, WAIT_SPREAD));
            if (chance.happens(plan.fidgetShare())) {
                others.add(fidget(tape));
                tape.pass(chance.around(PAUSE_MICROS / 2, WAIT_SPREAD));
            }
        }
        return new Evening(style.name(), style.hand(), tape.turns(), attempts, others);
    }

    private AttemptTruth attempt(EveningPlan plan, Tape tape, int number) {
        ScrambleTruth scramble = scramble(plan, tape);
        tape.pass(chance.around(GAP_MICROS, WAIT_SPREAD));
        PlannedSolve planned = planner.plan(mirror.of(tape.state()));
        int stages = chance.happens(plan.abandonShare())
                ? chance.between(1, LAST_STAGE_ABANDONED)
                : planned.stages().size();
        double slowness = Math.min(1 + style.pace().tiringPerSolve() * (number - 1), SLOWEST);
        SolveTruth solve = new SolvePerformer(style, chance, tape, slowness).perform(planned, stages);
        return new AttemptTruth(number, NOTES.get((number - 1) % NOTES.size()), scramble, solve);
    }

    private ScrambleTruth scramble(EveningPlan plan, Tape tape) {
        boolean announced = chance.happens(plan.announcedShare());
        List<Turn> words = announced ? scrambler.scrambleTo(RandomStates.forScramble(chance.random)) : madeUp();
        Orientation hold = chance.happens(plan.otherHoldShare())
                ? Orientation.ofIndex(chance.between(1, 23))
                : Orientation.IDENTITY;
        boolean fromSolved = tape.state().isSolved();
        Span turns = turnWithBothHands(words, hold, tape);
        return new ScrambleTruth(Sequence.ofTurns(words).toString(), announced, hold.letters(), turns, fromSolved);
    }

    private List<Turn> madeUp() {
        List<Turn> words = new ArrayList<>();
        int count = chance.between(16, 24);
        while (words.size() < count) {
            words.add(chance.turnAfter(words));
        }
        return words;
    }

    private OtherTruth fidget(Tape tape) {
        String words = chance.oneOf(IDLE_WORDS);
        List<Turn> turns = Sequence.parse(words).walk(Orientation.IDENTITY).turns();
        return new OtherTruth(turnWithBothHands(turns, Orientation.IDENTITY, tape), words);
    }

    private Span turnWithBothHands(List<Turn> words, Orientation hold, Tape tape) {
        int from = tape.size();
        for (Turn word : words) {
            Turn core = hold.toCore(word);
            tape.pass(chance.around(SCRAMBLE_TURN_MICROS, WAIT_SPREAD));
            if (core.quarters() != 2 || style.habits().halfTurnsWhole()) {
                tape.turn(core);
            } else {
                tape.turn(Turn.of(core.face(), 1));
                tape.pass(chance.around(SECOND_QUARTER_MICROS, WAIT_SPREAD));
                tape.turn(Turn.of(core.face(), 1));
            }
        }
        return new Span(from, tape.size());
    }
}
