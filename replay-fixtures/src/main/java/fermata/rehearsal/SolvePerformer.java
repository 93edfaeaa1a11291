package fermata.rehearsal;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.HandMirror;
import fermata.rehearsal.character.Pauses;
import fermata.rehearsal.planning.PlannedSolve;
import fermata.rehearsal.planning.PlannedStage;
import fermata.rehearsal.truth.MoveTruth;
import fermata.rehearsal.truth.RestCause;
import fermata.rehearsal.truth.SolveTruth;
import fermata.rehearsal.truth.StageTruth;
import java.util.ArrayList;
import java.util.List;

/** Turns one planned solve, move by move, with its slips and pauses. One instance a solve. */
final class SolvePerformer {
    private static final double SLIP_NOTICED_MICROS = 260_000;
    private static final List<Face> FACES_SLIPPED = List.of(Face.U, Face.R, Face.F);

    private final CuberStyle style;
    private final HandMirror mirror;
    private final Chance chance;
    private final Tape tape;
    private final SolveTimer timer;
    private final Grip grip = new Grip();
    private final List<MoveTruth> moves = new ArrayList<>();
    private final List<StageTruth> stages = new ArrayList<>();

    private Orientation hold = Orientation.IDENTITY;

    SolvePerformer(CuberStyle style, Chance chance, Tape tape, double slowness) {
        this.style = style;
        this.mirror = HandMirror.before(style.hand());
        this.chance = chance;
        this.tape = tape;
        this.timer = new SolveTimer(style, chance, tape, slowness);
    }

    /** The first {@code stageCount} stages of the plan, which is for a left hand. */
    SolveTruth perform(PlannedSolve plan, int stageCount) {
        int from = tape.size();
        hold = plan.start();
        for (PlannedStage stage : plan.stages().subList(0, stageCount)) {
            perform(stage);
        }
        return new SolveTruth(
                tape.state().isSolved(),
                mirror.of(plan.start()).letters(),
                new Span(from, tape.size()),
                moves,
                stages,
                timer.rhythm());
    }

    private void perform(PlannedStage stage) {
        int from = tape.size();
        boolean isPair = stage.name().startsWith("pair");
        for (List<Move> look : stage.looks()) {
            grip.relax();
            pauseBefore(stage, isPair);
            for (int place = 0; place < look.size(); place++) {
                boolean known = place > 0 && !isPair;
                make(look.get(place), known, false);
                boolean isInside = place > 0 && place < look.size() - 1;
                if (isInside && chance.happens(style.habits().slipProbability())) {
                    slip(look.get(place));
                }
            }
        }
        String caseName = isPair ? mirror.ofPlaces(stage.caseName()) : stage.caseName();
        stages.add(new StageTruth(
                stage.name(),
                caseName,
                new Span(from, tape.size()),
                stage.looks().size()));
    }

    private void pauseBefore(PlannedStage stage, boolean isPair) {
        Pauses pauses = style.pauses();
        if (isPair && chance.happens(pauses.lookAheadProbability())) {
            timer.rest(RestCause.LOOK_AHEAD, pauses.lookAheadMicros());
        } else if (stage.name().equals("orient")) {
            timer.rest(RestCause.RECOGNITION, pauses.orientMicros());
        } else if (stage.name().equals("permute")) {
            timer.rest(RestCause.RECOGNITION, pauses.permuteMicros());
        }
    }

    private void make(Move move, boolean known, boolean isSlip) {
        int from = tape.size();
        if (move instanceof Move.Rotation) {
            int steps = move.quarters() == 2 ? 2 : 1;
            timer.rest(RestCause.ROTATION, style.pauses().rotationMicros() * (1 + 0.5 * (steps - 1)));
            grip.rotate();
        } else {
            int sense = grip.senseOfHalfTurn(move);
            grip.follow(move).ifPresent(timer::regrip);
            for (Turn turn : move.turns(hold)) {
                turn(turn, sense, known);
            }
        }
        hold = hold.then(move.rotation());
        moves.add(new MoveTruth(mirror.of(move).written(), new Span(from, tape.size()), isSlip));
    }

    private void turn(Turn turn, int sense, boolean known) {
        if (turn.quarters() != 2 || style.habits().halfTurnsWhole()) {
            timer.turn(mirror.of(turn), known);
            return;
        }
        Turn quarter = mirror.of(Turn.of(turn.face(), sense));
        timer.turn(quarter, known);
        timer.turn(quarter, known);
    }

    /** A turn too many, or of the wrong side, noticed and taken back. */
    private void slip(Move made) {
        boolean isOvershoot = made instanceof Move.Layer && made.quarters() != 2 && chance.happens(0.5);
        Move wrong = isOvershoot ? made : strayFrom(made);
        make(wrong, false, true);
        timer.rest(RestCause.SLIP, SLIP_NOTICED_MICROS);
        make(wrong.inverse(), false, true);
    }

    private Move strayFrom(Move made) {
        Move stray = made;
        while (stray.letter().equalsIgnoreCase(made.letter())) {
            stray = new Move.Layer(Turn.of(chance.oneOf(FACES_SLIPPED), chance.happens(0.5) ? 1 : 3));
        }
        return stray;
    }
}
