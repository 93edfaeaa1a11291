package fermata.rehearsal.character;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.truth.CuberHand;

/** Stands between a left hand, which all planning is for, and the hand that solves. */
public enum HandMirror {
    /** For a left hand: shows things as they are. */
    ABSENT,
    /** For a right hand: stands between R and L. */
    PRESENT;

    public static HandMirror before(CuberHand hand) {
        return hand == CuberHand.RIGHT ? PRESENT : ABSENT;
    }

    public CubeState of(CubeState state) {
        return this == PRESENT ? Mirror.of(state) : state;
    }

    public Turn of(Turn turn) {
        return this == PRESENT ? Mirror.of(turn) : turn;
    }

    public Orientation of(Orientation hold) {
        return this == PRESENT ? Mirror.of(hold) : hold;
    }

    public Move of(Move move) {
        return this == PRESENT ? move.mirrored() : move;
    }

    /** A name of places by their centres, such as FR or FR+BL. */
    public String ofPlaces(String names) {
        return this == PRESENT ? names.replace('R', '?').replace('L', 'R').replace('?', 'L') : names;
    }

    public Face of(Face face) {
        return this == PRESENT ? Mirror.of(face) : face;
    }
}
