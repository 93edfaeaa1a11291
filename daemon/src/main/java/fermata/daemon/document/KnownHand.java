package fermata.daemon.document;

import fermata.analysis.hand.HandReading;
import fermata.analysis.hold.sequence.SequenceReading;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one solve's hand.
 *
 * @param reading what the solver said or what was inferred; none where turns were lost
 * @param before what had been inferred before the solver said it; empty unless it was said
 * @param corrections how many solves of the same solver were set right, which the reading stands on
 * @param sequences how its last-layer sequences were read before what the days before repeat had a say, to learn
 *     from; none where the solver said it, or of a solve that teaches nothing
 */
public record KnownHand(
        Optional<HandReading> reading, Optional<HandReading> before, int corrections, List<SequenceReading> sequences) {
    public KnownHand {
        sequences = List.copyOf(sequences);
    }
}
