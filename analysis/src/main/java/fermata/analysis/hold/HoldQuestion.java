package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.Objects;

/**
 * A turn stream whose holds are asked for.
 *
 * @param turns in the core frame, at least one
 * @param start the state before the first turn, seen against the centres
 * @param hand as the solver stated it; if unknown, all hands are summed over
 * @param evidence what is known besides
 */
public record HoldQuestion(List<Turn> turns, CubeState start, Hand hand, HoldEvidence evidence) {
    public HoldQuestion {
        turns = List.copyOf(turns);
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(evidence, "evidence");
        if (turns.isEmpty()) {
            throw new IllegalArgumentException("no turn, so no hold to ask for");
        }
    }
}
