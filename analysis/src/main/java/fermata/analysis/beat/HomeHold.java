package fermata.analysis.beat;

import fermata.analysis.event.Hand;
import fermata.analysis.hand.TurnOdds;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;

/**
 * A best guess at holds where none were inferred: the cross below, and of the four fronts, stage by stage, the one
 * under which the turns are those that a hand likes. How often a hand turns which side is common practice, no source.
 */
final class HomeHold {
    /** By face in the order U R F D L B, for a left hand; the right hand's R and L are exchanged. */
    private static final double[] LIKING = {0.40, 0.36, 0.08, 0.06, 0.06, 0.04};

    private HomeHold() {}

    static HandFacts guess(SolveRecord solve, Hand hand) {
        List<HandFacts.AtTurn> turns = new ArrayList<>();
        List<Turn> core = solve.turns().stream().map(record -> record.core()).toList();
        for (StageRecord stage : solve.stages()) {
            addBest(core, stage.span(), solve, hand, turns);
        }
        if (turns.size() < core.size()) {
            addBest(core, new Span(turns.size(), core.size()), solve, hand, turns);
        }
        return new HandFacts(hand, false, turns);
    }

    private static void addBest(
            List<Turn> core, Span span, SolveRecord solve, Hand hand, List<HandFacts.AtTurn> turns) {
        List<Orientation> candidates = Orientation.all().stream()
                .filter(hold -> solve.crossFaces().isEmpty()
                        || hold.coreAt(Face.D) == solve.crossFaces().get(0))
                .toList();
        double[] likings = candidates.stream()
                .mapToDouble(hold -> liking(core.subList(span.from(), span.to()), hold, hand))
                .toArray();
        int best = 0;
        for (int which = 1; which < likings.length; which++) {
            best = likings[which] > likings[best] ? which : best;
        }
        double total = 0;
        for (double liking : likings) {
            total += Math.exp(liking - likings[best]);
        }
        Orientation hold = candidates.get(best);
        for (int turn = span.from(); turn < span.to(); turn++) {
            Move move = new Move.Layer(hold.toHand(core.get(turn)));
            turns.add(new HandFacts.AtTurn(move, hold, 1 / total, TurnOdds.certain(move, 0)));
        }
    }

    private static double liking(List<Turn> turns, Orientation hold, Hand hand) {
        double sum = 0;
        for (Turn turn : turns) {
            Face seen = hold.handAt(turn.face());
            sum += Math.log(LIKING[(hand == Hand.RIGHT ? Mirror.of(seen) : seen).ordinal()]);
        }
        return sum;
    }
}
