package fermata.daemon.json;

import java.util.List;
import java.util.Map;

/**
 * Solves as {@code solves --json} lists them, oldest first.
 *
 * @param solves the list
 */
public record SolvesView(List<Item> solves) {
    /** One line of the list; docs/formats.md says what each member means. */
    public record Item(
            String id,
            String day,
            int number,
            String startedAt,
            String hand,
            boolean solved,
            String outcome,
            boolean setAside,
            Long timeUs,
            int turns,
            int lost,
            String method,
            Long restUs,
            Map<String, Long> stagesUs) {
        /** The same with its place among the day's. */
        public Item numbered(int newNumber) {
            return new Item(
                    id, day, newNumber, startedAt, hand, solved, outcome, setAside, timeUs, turns, lost, method, restUs,
                    stagesUs);
        }
    }
}
