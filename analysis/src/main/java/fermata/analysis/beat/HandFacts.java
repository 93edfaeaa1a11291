package fermata.analysis.beat;

import fermata.analysis.event.Hand;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.MadeTurn;
import fermata.analysis.hand.TurnOdds;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.regrip.HeardTurns;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What the hand did at each turn of a solve, as far as holds tell.
 *
 * @param hand which hand
 * @param isRead whether holds were inferred; if not, rotations and regrips can only be guessed at
 * @param turns one for each turn
 */
public record HandFacts(Hand hand, boolean isRead, List<AtTurn> turns) {
    /**
     * The hand at one turn.
     *
     * @param move what the hand made of it: a layer, a wide turn, or a slice of which this turn is one half
     * @param hold before it
     * @param holdProbability of the hold
     * @param odds what is likely over all readings: a rotation since the turn before, and where the layer was seen
     */
    public record AtTurn(Move move, Orientation hold, double holdProbability, TurnOdds odds) {
        public AtTurn {
            Objects.requireNonNull(move, "move");
            Objects.requireNonNull(hold, "hold");
            Objects.requireNonNull(odds, "odds");
            if (!(holdProbability >= 0 && holdProbability <= 1)) {
                throw new IllegalArgumentException("holdProbability " + holdProbability + " is not in 0..1");
            }
        }

        /** That the cube was turned as a whole since the turn before. */
        public double rotationProbability() {
            return odds.rotated();
        }
    }

    public HandFacts {
        Objects.requireNonNull(hand, "hand");
        turns = List.copyOf(turns);
    }

    /** From what is known of the hand, turn by turn as it was heard. */
    public static HandFacts of(HandReading reading, Hand hand) {
        List<AtTurn> turns = new ArrayList<>();
        for (MadeTurn turn : reading.turns()) {
            TurnOdds odds = reading.odds().get(turns.size());
            turns.add(new AtTurn(turn.move(), turn.hold(), turn.probability(), odds));
        }
        return new HandFacts(hand, true, turns);
    }

    /**
     * The turns as regrips are read from them.
     *
     * @param starts turns at which a stage begins
     * @param evidence by turn, what the interval before it says of a regrip, a log ratio
     */
    public HeardTurns heard(Set<Integer> starts, List<Double> evidence) {
        return new HeardTurns(
                turns.stream().map(AtTurn::move).toList(),
                turns.stream().map(AtTurn::odds).toList(),
                starts,
                evidence);
    }

    /**
     * Where no holds were inferred: a guess, the cross below and the front that suits each stage's turns, with the
     * probability it deserves. Rotations and regrips are not told then.
     */
    public static HandFacts guess(SolveRecord solve, Hand hand) {
        return HomeHold.guess(solve, hand);
    }
}
