package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.Comparator;
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
        Map<K, Map<Long, Integer>> counts = counts(code, examples, key);
        Map<K, Long> values = new HashMap<>();
        Set<Long> claimed = new HashSet<>();
        int agreeing = 0;
        for (Claim<K> claim : claims(counts)) {
            // Where a slip and a loss leave a key two values, the one that no other key has more often is its own.
            if (!values.containsKey(claim.key) && (!claimed.contains(claim.value) || claim.isOnly)) {
                values.put(claim.key, claim.value);
                claimed.add(claim.value);
                agreeing += claim.count;
            }
        }
        return new FieldVote<>(values, agreeing, counts.size());
    }

    /** A value that examples of a key have; the only one if all have it. */
    private record Claim<K>(K key, long value, int count, boolean isOnly) {}

    private static <K> List<Claim<K>> claims(Map<K, Map<Long, Integer>> counts) {
        List<Claim<K>> claims = new ArrayList<>();
        counts.forEach((key, values) ->
                values.forEach((value, count) -> claims.add(new Claim<>(key, value, count, values.size() == 1))));
        claims.sort(Comparator.comparingInt((Claim<K> claim) -> -claim.count).thenComparingLong(Claim::value));
        return claims;
    }

    /** How many examples have a value that most examples of their key have, whatever other keys have. */
    static <K> int following(BitField field, List<Example> examples, Function<Turn, K> key) {
        Map<K, Map<Long, Integer>> counts = counts(TurnCode.of(field), examples, key);
        return counts.values().stream()
                .mapToInt(values ->
                        values.values().stream().mapToInt(n -> n).max().orElseThrow())
                .sum();
    }

    private static <K> Map<K, Map<Long, Integer>> counts(TurnCode code, List<Example> examples, Function<Turn, K> key) {
        Map<K, Map<Long, Integer>> counts = new HashMap<>();
        for (Example example : examples) {
            counts.computeIfAbsent(key.apply(example.asked()), k -> new HashMap<>())
                    .merge(code.read(example.frame().bytes()), 1, Integer::sum);
        }
        return counts;
    }

    /** Whether every key has a value of its own. */
    boolean isOneToOne() {
        Set<Long> distinct = new HashSet<>(values.values());
        return values.size() == keys && distinct.size() == keys;
    }
}
