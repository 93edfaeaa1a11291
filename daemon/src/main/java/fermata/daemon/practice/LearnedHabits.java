package fermata.daemon.practice;

import fermata.analysis.hold.Habits;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldModel;
import java.util.List;

/**
 * Habits as they were learned last: kept from one derivation to the next, as learning takes a second or two and
 * corrections are few. Belongs to whoever outlives a derivation. Not thread-safe.
 */
final class LearnedHabits {
    private List<HoldExample> from = List.of();
    private Habits habits = Habits.NONE;

    /** What these corrected solves teach; learned anew only if they are others than last time. */
    Habits of(List<HoldExample> corrected) {
        if (!from.equals(corrected)) {
            habits = Habits.learn(HoldModel.shipped(), corrected);
            from = List.copyOf(corrected);
        }
        return habits;
    }
}
