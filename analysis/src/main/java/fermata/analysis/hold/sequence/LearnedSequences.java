package fermata.analysis.hold.sequence;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The last-layer sequences that a solver repeats, learned from readings of solves that nobody set right.
 *
 * <p>A solver turns a sequence in the same way night after night, so readings of it that differ cannot all be right.
 * The readings must not have been made by what was learned from earlier ones: it would confirm itself. Immutable,
 * thread-safe. Cost: 24 look-ups for each turn of each reading.
 */
public final class LearnedSequences {
    /** Nothing was seen yet. */
    public static final LearnedSequences NONE = new LearnedSequences(List.of());

    /** What was seen in fewer solves is not taken for something that a solver repeats. */
    private static final int FEWEST = 3;

    private final List<LearnedSequence> all;
    private final Map<List<Turn>, List<Face>> sure = new HashMap<>();

    private LearnedSequences(List<LearnedSequence> all) {
        this.all = List.copyOf(all);
        for (LearnedSequence one : all) {
            if (one.isSure()) {
                SequenceReading reading = new SequenceReading(one.track(), one.probability());
                sure.put(reading.key(), reading.layers());
            }
        }
    }

    /**
     * Learns.
     *
     * @param solves of each solve what was read in it, oldest first
     */
    public static LearnedSequences of(List<List<SequenceReading>> solves) {
        Map<List<Turn>, List<SequenceReading>> byKey = new LinkedHashMap<>();
        for (List<SequenceReading> solve : solves) {
            solve.forEach(reading -> byKey.computeIfAbsent(reading.key(), any -> new ArrayList<>())
                    .add(reading));
        }
        return new LearnedSequences(byKey.values().stream()
                .filter(readings -> readings.size() >= FEWEST)
                .map(LearnedSequence::pooled)
                .sorted(Comparator.comparingInt(LearnedSequence::seen).reversed())
                .toList());
    }

    /** Those that were seen in {@value #FEWEST} solves or more, most often first, sure or not. */
    public List<LearnedSequence> all() {
        return all;
    }

    /** The sure ones, to read solves by. */
    public SequenceBook book() {
        return SequenceBook.ofLearned(
                all.stream().filter(LearnedSequence::isSure).toList());
    }

    /** Whether something was read otherwise than a sure one says. Where all agree, there is nothing to read again. */
    public boolean contradict(List<SequenceReading> readings) {
        return readings.stream().anyMatch(reading -> {
            List<Face> layers = reading.layers();
            return !sure.getOrDefault(reading.key(), layers).equals(layers);
        });
    }
}
