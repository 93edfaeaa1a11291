package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.analysis.hand.StatedHand;
import fermata.daemon.json.SolveView;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Store;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.List;

/** Keeps what solvers say their hands did. Not thread-safe. */
public final class Corrections {
    private final Store store;

    /** Over a store that may be written, which the caller closes. */
    public Corrections(Store store) {
        this.store = store;
    }

    /**
     * Keeps the words about a solve if they make its turns; the last words hold.
     *
     * @param words no words at all take earlier ones back
     * @return what became of the comparison; only what agrees is kept
     */
    public StatedHand state(SolveView solve, Sequence words) {
        List<Turn> heard =
                solve.turns().stream().map(turn -> Turn.parse(turn.core())).toList();
        StatedHand outcome = StatedHand.of(words, heard);
        if (outcome instanceof StatedHand.Agrees) {
            keep(solve, words.toString());
        }
        return outcome;
    }

    /** Takes earlier words about a solve back. */
    public void takeBack(SolveView solve) {
        keep(solve, "");
    }

    private void keep(SolveView solve, String words) {
        CaptureRow capture = store.captures()
                .find(Long.parseLong(solve.id().substring(0, solve.id().indexOf('-'))))
                .orElseThrow();
        new Afterwards(store.captures())
                .say(
                        capture,
                        at -> new Event.HandStated(
                                solve.id(), words, capture.start().origin(), at));
    }
}
