package fermata.analysis.rest;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HandTurn;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.InferredRotation;
import fermata.analysis.record.SolveRecord;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

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
     * @param rotationProbability that the cube was turned as a whole since the turn before
     */
    public record AtTurn(Move move, Orientation hold, double holdProbability, double rotationProbability) {
        public AtTurn {
            Objects.requireNonNull(move, "move");
            Objects.requireNonNull(hold, "hold");
            requireProbability("holdProbability", holdProbability);
            requireProbability("rotationProbability", rotationProbability);
        }

        private static void requireProbability(String name, double value) {
            if (!(value >= 0 && value <= 1)) {
                throw new IllegalArgumentException(name + " " + value + " is not in 0..1");
            }
        }
    }

    public HandFacts {
        Objects.requireNonNull(hand, "hand");
        turns = List.copyOf(turns);
    }

    /** From what was inferred of the holds. */
    public static HandFacts of(HoldReading reading, Hand hand) {
        double[] rotations = new double[reading.turns().size()];
        for (InferredRotation rotation : reading.rotations()) {
            if (rotation.beforeTurn() < rotations.length) {
                rotations[rotation.beforeTurn()] = rotation.probability();
            }
        }
        List<AtTurn> turns = new ArrayList<>();
        for (HandTurn turn : reading.turns()) {
            turns.add(new AtTurn(turn.move(), turn.hold(), turn.probability(), rotations[turns.size()]));
        }
        return new HandFacts(hand, true, turns);
    }

    /**
     * Where no holds were inferred: a guess, the cross below and the front that suits each stage's turns, with the
     * probability it deserves. Rotations and regrips are not told then.
     */
    public static HandFacts guess(SolveRecord solve, Hand hand) {
        return HomeHold.guess(solve, hand);
    }
}
