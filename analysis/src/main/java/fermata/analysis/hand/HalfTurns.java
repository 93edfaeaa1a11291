package fermata.analysis.hand;

import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;

/**
 * Heard turns with the two quarters of a half turn taken together, as a hand makes and a writer writes them. The heard
 * turns stay what they are: a merged one is a span over them.
 *
 * @param turns merged
 * @param firsts by merged turn, the place of its first heard turn
 * @param heard the turns as they were heard
 */
record HalfTurns(List<Turn> turns, List<Integer> firsts, List<Turn> heard) {
    HalfTurns {
        turns = List.copyOf(turns);
        firsts = List.copyOf(firsts);
        heard = List.copyOf(heard);
    }

    /** Merges equal quarter turns that follow each other, two at a time. */
    static HalfTurns of(List<Turn> heard) {
        List<Turn> turns = new ArrayList<>();
        List<Integer> firsts = new ArrayList<>();
        for (int at = 0; at < heard.size(); at++) {
            Turn turn = heard.get(at);
            firsts.add(at);
            if (at + 1 < heard.size() && turn.equals(heard.get(at + 1)) && turn.quarters() != 2) {
                turns.add(Turn.of(turn.face(), 2));
                at++;
            } else {
                turns.add(turn);
            }
        }
        return new HalfTurns(turns, firsts, heard);
    }

    /** One past the last heard turn of a merged one. */
    int end(int merged) {
        return merged + 1 < firsts.size() ? firsts.get(merged + 1) : heard.size();
    }

    /** The heard turns that a move made from a hold, each as the part of the move that it is. */
    static List<MadeTurn> parts(List<Turn> heard, Move move, Orientation hold, double probability) {
        List<MadeTurn> parts = new ArrayList<>();
        Orientation now = hold;
        for (Turn turn : heard) {
            Move part = part(turn, move, now);
            parts.add(new MadeTurn(part, now, probability));
            now = part instanceof Move.Wide ? now.then(part.rotation()) : now;
        }
        return parts;
    }

    private static Move part(Turn heard, Move move, Orientation hold) {
        return move.fold(
                layer -> new Move.Layer(hold.toHand(heard)),
                wide -> new Move.Wide(hold.handAt(heard.face()).opposite(), heard.quarters()),
                slice -> slice,
                rotation -> rotation);
    }
}
