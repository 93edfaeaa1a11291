package fermata.daemon.practice;

import fermata.analysis.hand.HandReader;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.record.SolveRecord;
import java.util.List;

/**
 * HoldHabits as they were learned last: kept from one derivation to the next, as learning takes some seconds and
 * corrections are few. Belongs to whoever outlives a derivation. Not thread-safe.
 */
final class LearnedHabits {
    private List<HoldExample> from = List.of();
    private List<SolveRecord> beside = List.of();
    private String by = "";
    private HoldHabits habits = HoldHabits.NONE;

    /**
     * What these corrected solves teach, and by them solves that nobody set right; learned anew only if they are others
     * than last time.
     *
     * @param sequences that are known of the solver
     */
    HoldHabits of(List<HoldExample> corrected, List<SolveRecord> others, SequenceBook sequences) {
        String known = sequences.print();
        if (!from.equals(corrected) || !beside.equals(others) || !known.equals(by)) {
            habits = new HandReader(new HoldInference(HoldModel.shipped()))
                    .knowing(sequences)
                    .learn(HoldModel.shipped(), corrected, others);
            from = List.copyOf(corrected);
            beside = List.copyOf(others);
            by = known;
        }
        return habits;
    }
}
