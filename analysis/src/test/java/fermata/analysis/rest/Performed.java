package fermata.analysis.rest;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.analysis.hand.TurnOdds;
import fermata.analysis.method.MethodReader;
import fermata.analysis.method.MethodReading;
import fermata.analysis.method.StageMark;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.ScrambleRecord;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.CuberHand;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.MoveTruth;
import fermata.rehearsal.truth.RestTruth;
import fermata.rehearsal.truth.SolveTruth;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A rehearsed solve: turns with times, the truth about its rests, and the record and hand facts an analysis would have.
 *
 * @param solveOfNight how many solves came before
 * @param at microseconds of each turn since the first
 * @param rests by turns of this solve
 */
public record Performed(
        CuberStyle style,
        int solveOfNight,
        CubeState start,
        List<Turn> turns,
        List<Long> at,
        HandFacts facts,
        List<RestTruth> rests) {

    /** Solves of one plain evening. */
    public static List<Performed> evening(CuberStyle style, long seed, int solves) {
        Evening evening = new VirtualCuber(style, new SplittableRandom(seed)).evening(EveningPlan.plain(solves));
        List<CubeState> states = new ArrayList<>();
        CubeState state = CubeState.SOLVED;
        for (var turn : evening.turns()) {
            states.add(state);
            state = state.apply(turn.turn());
        }
        List<Performed> performed = new ArrayList<>();
        for (AttemptTruth attempt : evening.attempts()) {
            SolveTruth solve = attempt.solve();
            int from = solve.turns().from();
            List<Turn> turns = new ArrayList<>();
            List<Long> at = new ArrayList<>();
            for (int turn = from; turn < solve.turns().to(); turn++) {
                turns.add(evening.turns().get(turn).turn());
                at.add(evening.turns().get(turn).atMicros()
                        - evening.turns().get(from).atMicros());
            }
            List<RestTruth> rests = solve.rhythm().rests().stream()
                    .map(rest -> new RestTruth(rest.afterTurn() - from, rest.lengthMicros(), rest.cause()))
                    .toList();
            performed.add(new Performed(
                    style, attempt.number() - 1, states.get(from), turns, at, facts(style, solve), rests));
        }
        return performed;
    }

    Performed timed(List<Long> times, List<RestTruth> truth, int place) {
        return new Performed(style, place, start, turns, times, facts, truth);
    }

    private static HandFacts facts(CuberStyle style, SolveTruth solve) {
        Hand hand = style.hand() == CuberHand.LEFT ? Hand.LEFT : Hand.RIGHT;
        Orientation hold = Orientation.ofLetters(solve.hold());
        List<HandFacts.AtTurn> at = new ArrayList<>();
        boolean rotated = false;
        for (MoveTruth truth : solve.moves()) {
            Move move = Sequence.parse(truth.move()).moves().get(0);
            rotated |= truth.isRotation();
            for (int turn = truth.turns().from(); turn < truth.turns().to(); turn++) {
                // A half turn heard as two quarters is two quarters of the same layer.
                boolean isHalved = truth.turns().length() == 2;
                Move made = isHalved ? quarter(move) : move;
                at.add(new HandFacts.AtTurn(made, hold, 1, TurnOdds.certain(made, rotated && !at.isEmpty() ? 1 : 0)));
                rotated = false;
            }
            hold = hold.then(move.rotation());
        }
        return new HandFacts(hand, true, at);
    }

    private static Move quarter(Move half) {
        return half instanceof Move.Wide wide
                ? new Move.Wide(wide.face(), 1)
                : new Move.Layer(Turn.of(((Move.Layer) half).turn().face(), 1));
    }

    HandFacts unread() {
        return new HandFacts(facts.hand(), false, facts.turns());
    }

    /** As an analysis would read it. */
    public SolveRecord record() {
        List<TurnRecord> records = new ArrayList<>();
        for (int turn = 0; turn < turns.size(); turn++) {
            records.add(new TurnRecord(turn, at.get(turn), turns.get(turn), TurnSource.HEARD));
        }
        MethodReading method = MethodReader.read(start, turns);
        Span all = new Span(20, 20 + turns.size());
        ScrambleRecord scramble =
                new ScrambleRecord("", Boundary.INFERRED, 0.9, Orientation.IDENTITY, new Span(20, 20), start);
        Segment.Attempt attempt = new Segment.Attempt(
                style.name() + "-" + solveOfNight,
                new Origin("galley", style.name(), facts.hand()),
                scramble,
                all,
                List.of(),
                Outcome.SOLVED,
                false,
                false);
        return new SolveRecord(
                attempt,
                0,
                at.get(at.size() - 1),
                0,
                method.method(),
                method.crossFaces(),
                records,
                method.stages().stream().map(this::timed).toList());
    }

    private StageRecord timed(StageMark mark) {
        return new StageRecord(
                mark.name(),
                mark.caseName(),
                mark.span(),
                at.get(Math.max(0, mark.span().from() - 1)),
                at.get(Math.max(0, mark.span().to() - 1)),
                mark.faces(),
                mark.parts().stream().map(this::timed).toList());
    }

    /** All rest after a turn, microseconds. */
    long restAfter(int turn) {
        return rests.stream()
                .filter(rest -> rest.afterTurn() == turn)
                .mapToLong(RestTruth::lengthMicros)
                .sum();
    }
}
