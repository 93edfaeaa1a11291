package fermata.rehearsal;

import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.rehearsal.truth.RegripTruth;
import java.util.Optional;

/**
 * A simple model of a left hand: the wrist turns the free side one quarter either way from rest and no further, a
 * rotation of the cube leaves the fingers out of place, and some sides are out of reach without letting go.
 */
final class Grip {
    private static final int WRIST_REACH = 1;

    private int wrist;
    private boolean displaced;
    /** Whether the hand has let go of the side it holds in order to turn it. */
    private boolean away;

    /** A stage begins: the hand has come to rest. */
    void relax() {
        wrist = 0;
        away = false;
    }

    /** The cube was rotated, or is about to be. */
    void rotate() {
        wrist = 0;
        away = false;
        displaced = true;
    }

    /** Follows a move and says whether, and why, it needed a regrip first. */
    Optional<RegripTruth.Reason> follow(Move move) {
        boolean isBesideHeld = isLetter(move, Face.L) || away && isLetter(move, Face.U);
        if (displaced) {
            displaced = false;
            away = isLetter(move, Face.L);
            followWrist(move);
            return Optional.of(RegripTruth.Reason.ROTATION);
        }
        if (isBesideHeld != away) {
            // Once out for the held side and once back, however often it is turned.
            away = isBesideHeld;
            wrist = 0;
            followWrist(move);
            return Optional.of(RegripTruth.Reason.REACH);
        }
        if (isOutOfReach(move)) {
            wrist = 0;
            return Optional.of(RegripTruth.Reason.REACH);
        }
        return followWrist(move) ? Optional.of(RegripTruth.Reason.WRIST) : Optional.empty();
    }

    /** The sense in which the hand makes a half turn: 1 clockwise, 3 against. */
    int senseOfHalfTurn(Move move) {
        return turnsFreeSide(move) && wrist > 0 ? 3 : 1;
    }

    private boolean followWrist(Move move) {
        if (!turnsFreeSide(move)) {
            return false;
        }
        int quarters = move.quarters() == 3 ? -1 : move.quarters() == 2 && wrist > 0 ? -2 : move.quarters();
        wrist += quarters;
        if (Math.abs(wrist) <= WRIST_REACH) {
            return false;
        }
        wrist = Integer.signum(quarters);
        return true;
    }

    private static boolean turnsFreeSide(Move move) {
        return isLetter(move, Face.R);
    }

    /** The far side, and half turns of the front. */
    private static boolean isOutOfReach(Move move) {
        return isLetter(move, Face.B) || isLetter(move, Face.F) && move.quarters() == 2;
    }

    private static boolean isLetter(Move move, Face face) {
        return move.letter().equalsIgnoreCase(face.name());
    }
}
