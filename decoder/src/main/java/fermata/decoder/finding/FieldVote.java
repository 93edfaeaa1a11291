package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.TurnCode;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * How well a field's value follows something of the turn that was asked for. Slips and lost frames leave a few examples
 * wrong, so the value that most examples of a key have is taken for the key's.
 *
 * @param values the commonest value of each key
 * @param agreeing examples that have their key's value
 * @param keys how many keys were met
 */
record FieldVote<K>(Map<K, Long> values, int agreeing, int keys) {
    static <K> FieldVote<K> of(BitField field, List<Example> examples, Function<Turn, K> key) {
        return of(TurnCode.of(field), examples, key);
    }

    static <K> FieldVote<K> of(TurnCode code, List<Example> examples, Function<Turn, K> key) {
        Map<K, Map<Long, Integer>> counts = new HashMap<>();
        for (Example example : examples) {
            counts.computeIfAbsent(key.apply(example.asked()), k -> new HashMap<>())
                    .merge(code.read(example.frame().bytes()), 1, Integer::sum);
        }
        Map<K, Long> values = new HashMap<>();
        int agreeing = 0;
        for (Map.Entry<K, Map<Long, Integer>> entry : counts.entrySet()) {
            Map.Entry<Long, Integer> commonest = entry.getValue().entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .orElseThrow();
            values.put(entry.getKey(), commonest.getKey());
            agreeing += commonest.getValue();
        }
        return new FieldVote<>(values, agreeing, counts.size());
    }

    /** Whether every key has a value of its own. */
    boolean isOneToOne() {
        Set<Long> distinct = new HashSet<>(values.values());
        return distinct.size() == keys;
    }
}
