package fermata.analysis.rehearsal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;

/** Stands between a left hand, which all planning is for, and the hand that solves. */
enum Mirror {
    /** For a left hand: shows things as they are. */
    ABSENT,
    /** For a right hand: stands between R and L. */
    PRESENT;

    static Mirror before(CuberHand hand) {
        return hand == CuberHand.RIGHT ? PRESENT : ABSENT;
    }

    CubeState of(CubeState state) {
        return this == PRESENT ? SeenState.mirrored(state) : state;
    }

    Turn of(Turn turn) {
        return this == PRESENT ? Turn.of(of(turn.face()), -turn.quarters()) : turn;
    }

    Orientation of(Orientation hold) {
        return this == PRESENT ? Orientation.of(of(hold.coreAt(Face.U)), of(hold.coreAt(Face.F))) : hold;
    }

    /** The same kind of move; slices do not occur here. */
    Move of(Move move) {
        if (this == ABSENT) {
            return move;
        }
        if (move instanceof Move.Layer layer) {
            return new Move.Layer(of(layer.turn()));
        }
        if (move instanceof Move.Wide wide) {
            return new Move.Wide(of(wide.face()), 4 - wide.quarters());
        }
        if (move instanceof Move.Rotation rotation) {
            // A rotation about the axis that stands on the mirror keeps its sense.
            boolean keepsSense = rotation.like() == Face.R;
            return keepsSense ? rotation : new Move.Rotation(rotation.like(), 4 - rotation.quarters());
        }
        throw new IllegalArgumentException("move " + move.written() + " is a slice, which no single hand turns here");
    }

    /** A name of places by their centres, such as FR or FR+BL. */
    String ofPlaces(String names) {
        return this == PRESENT ? names.replace('R', '?').replace('L', 'R').replace('?', 'L') : names;
    }

    Face of(Face face) {
        return this == PRESENT ? SeenState.mirrored(face) : face;
    }
}
