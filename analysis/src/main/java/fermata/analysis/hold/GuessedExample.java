package fermata.analysis.hold;

import java.util.List;
import java.util.Objects;

/**
 * A solve that nobody set right: how it was read, and of which turns that is sure enough to learn from.
 *
 * @param example as it was read
 * @param sure by turn
 */
public record GuessedExample(HoldExample example, List<Boolean> sure) {
    public GuessedExample {
        Objects.requireNonNull(example, "example");
        sure = List.copyOf(sure);
        if (sure.size() != example.track().size()) {
            throw new IllegalArgumentException("a guess of " + example.track().size() + " turns says of " + sure.size()
                    + " whether they are sure");
        }
    }
}
