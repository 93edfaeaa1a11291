package fermata.rehearsal.planning;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.Handling;
import fermata.rehearsal.character.LeftSide;
import java.util.ArrayList;
import java.util.List;

/**
 * How a left hand makes the moves of a pair: turns of the held side in a tilt, a turn of U and a turn of the cube as
 * one wide turn. Common practice, no source.
 */
final class Phrasing {
    private static final Move TILT = new Move.Rotation(Face.F, 1);
    private static final Move BACK = new Move.Rotation(Face.F, 3);

    private final Handling handling;
    private final Chance chance;

    Phrasing(Handling handling, Chance chance) {
        this.handling = handling;
        this.chance = chance;
    }

    List<Move> of(List<Move> meant) {
        List<Move> widened = widened(meant);
        return handling.left() == LeftSide.TILTED ? tilted(widened) : widened;
    }

    /** U y' is d, U' y is d': the upper side stays behind. */
    private List<Move> widened(List<Move> meant) {
        List<Move> made = new ArrayList<>();
        for (Move move : meant) {
            int last = made.size() - 1;
            boolean fits = move instanceof Move.Rotation
                    && last >= 0
                    && isLayer(made.get(last), Face.U)
                    && move.quarters() != 2
                    && made.get(last).quarters() == 4 - move.quarters();
            if (fits && chance.happens(handling.wideShare())) {
                made.set(last, new Move.Wide(Face.D, made.get(last).quarters()));
            } else {
                made.add(move);
            }
        }
        return made;
    }

    private List<Move> tilted(List<Move> meant) {
        List<Move> made = new ArrayList<>();
        int next = 0;
        while (next < meant.size()) {
            int last = lastInTilt(meant, next);
            if (last < next) {
                made.add(meant.get(next));
                next++;
                continue;
            }
            made.add(TILT);
            while (next <= last) {
                made.add(inTilt(meant.get(next)));
                next++;
            }
            made.add(BACK);
        }
        return made;
    }

    /** The last turn of a tilt that begins here; before it if none does. */
    private int lastInTilt(List<Move> meant, int first) {
        int last = first - 1;
        if (!isLayer(meant.get(first), Face.L) && !(handling.tiltsEarly() && isLayer(meant.get(first), Face.U))) {
            return last;
        }
        for (int at = first; at < meant.size(); at++) {
            if (isLayer(meant.get(at), Face.L)) {
                last = at;
            } else if (!isLayer(meant.get(at), Face.U)) {
                break;
            }
        }
        return last;
    }

    private static Move inTilt(Move move) {
        Turn turn = ((Move.Layer) move).turn();
        return new Move.Layer(Orientation.turning(Face.F, 1).toHand(turn));
    }

    private static boolean isLayer(Move move, Face face) {
        return move.letter().equals(face.name());
    }
}
