package fermata.analysis.rest;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import java.util.Arrays;
import java.util.Set;

/**
 * Where a single hand has to let go and take hold anew: when the wrist, which turns the free side one quarter either
 * way from rest, would go further; for the held side, the back, and half turns of the front; after a rotation. Common
 * practice, no source. How often each reason really costs time is learned from the solver's own log.
 */
final class RegripRule {
    private static final int WRIST_REACH = 1;

    private final HandFacts facts;
    private final Set<Integer> stageStarts;
    private final Face freeSide;
    private final Regrip[] reasons;
    private int wrist;
    private boolean isDisplaced;

    private RegripRule(HandFacts facts, Set<Integer> stageStarts) {
        this.facts = facts;
        this.stageStarts = stageStarts;
        this.freeSide = facts.hand() == Hand.RIGHT ? Face.L : Face.R;
        this.reasons = new Regrip[facts.turns().size()];
        Arrays.fill(reasons, Regrip.NONE);
    }

    /**
     * The reason before each turn. A half turn reported as two quarters is one move: its reason stands before the
     * first.
     *
     * @param stageStarts turns at which a stage begins: the hand has come to rest there
     */
    static Regrip[] reasons(HandFacts facts, Set<Integer> stageStarts) {
        RegripRule rule = new RegripRule(facts, stageStarts);
        boolean isOneHand = facts.hand() == Hand.LEFT || facts.hand() == Hand.RIGHT;
        if (!facts.isRead() || !isOneHand) {
            Arrays.fill(rule.reasons, Regrip.UNTOLD);
            return rule.reasons;
        }
        for (int turn = 0; turn < rule.reasons.length; turn++) {
            turn += rule.follow(turn) - 1;
        }
        return rule.reasons;
    }

    /** Follows the move that begins with this turn and says how many turns it has. */
    private int follow(int turn) {
        HandFacts.AtTurn at = facts.turns().get(turn);
        boolean isDouble = turn + 1 < reasons.length
                && !stageStarts.contains(turn + 1)
                && at.move().quarters() != 2
                && at.move().equals(facts.turns().get(turn + 1).move())
                && facts.turns().get(turn + 1).rotationProbability() < 0.5;
        int quarters = isDouble ? 2 : at.move().quarters();
        if (stageStarts.contains(turn)) {
            wrist = 0;
        }
        if (at.rotationProbability() >= 0.5) {
            wrist = 0;
            isDisplaced = true;
        }
        reasons[turn] = reason(at.move(), quarters);
        return isDouble ? 2 : 1;
    }

    private Regrip reason(Move move, int quarters) {
        if (isDisplaced) {
            isDisplaced = false;
            turnWrist(move, quarters);
            return Regrip.AFTER_ROTATION;
        }
        if (isLetter(move, freeSide.opposite()) || isLetter(move, Face.B) || isLetter(move, Face.F) && quarters == 2) {
            wrist = 0;
            return Regrip.REACH;
        }
        return turnWrist(move, quarters) ? Regrip.WRIST : Regrip.NONE;
    }

    private boolean turnWrist(Move move, int quarters) {
        if (!isLetter(move, freeSide)) {
            return false;
        }
        int by = quarters == 3 ? -1 : quarters == 2 && wrist > 0 ? -2 : quarters;
        wrist += by;
        if (Math.abs(wrist) <= WRIST_REACH) {
            return false;
        }
        wrist = Integer.signum(by);
        return true;
    }

    private static boolean isLetter(Move move, Face face) {
        return move.letter().equalsIgnoreCase(face.name());
    }
}
