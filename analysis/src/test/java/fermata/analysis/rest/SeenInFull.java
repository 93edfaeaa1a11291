package fermata.analysis.rest;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.event.Hand;
import fermata.analysis.lookahead.View;
import fermata.analysis.record.SolveRecord;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.orientation.Orientation;

/**
 * When the stickers of single pieces were plainly in view, worked out piece by piece without elimination or memory: an
 * independent lower bound of what could be known.
 */
final class SeenInFull {
    private final SolveRecord record;
    private final HandFacts facts;

    SeenInFull(SolveRecord record, HandFacts facts) {
        this.record = record;
        this.facts = facts;
    }

    /** Whether before this turn two stickers of the corner were in view. */
    boolean corner(Corner corner, int turn) {
        Corner place = state(turn).placeOf(corner);
        int seen = 0;
        for (int which = 0; which < 3; which++) {
            seen += isShown(place.sticker(which), turn) ? 1 : 0;
        }
        return seen >= 2;
    }

    /** Whether before this turn both stickers of the edge were in view. */
    boolean edge(Edge edge, int turn) {
        Edge place = state(turn).placeOf(edge);
        return isShown(place.sticker(0), turn) && isShown(place.sticker(1), turn);
    }

    private CubeState state(int turn) {
        CubeState state = record.attempt().scramble().start();
        for (int done = 0; done < turn; done++) {
            state = state.apply(record.turns().get(done).core());
        }
        return state;
    }

    private boolean isShown(int corePlace, int turn) {
        Orientation hold = facts.turns().get(turn).hold();
        Hand hand = facts.hand();
        for (int handPlace = 0; handPlace < 54; handPlace++) {
            if (hold.placeSeen(handPlace) == corePlace) {
                return View.PLAIN.shows(hand, handPlace);
            }
        }
        throw new IllegalStateException("no place is seen at " + corePlace);
    }
}
