package fermata.decoder.finding;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What the values of a code mean: quarter turns by the single turns, half turns by the two quick quarters. */
final class CodeTable {
    private final FrameGroup group;
    private final Lesson lesson;
    private final TurnCode code;
    private final List<Example> asAsked;
    private final int examples;

    CodeTable(FrameGroup group, Lesson lesson, TurnCode code, List<Example> asAsked, int examples) {
        this.group = group;
        this.lesson = lesson;
        this.code = code;
        this.asAsked = asAsked;
        this.examples = examples;
    }

    CodeFound found() {
        Map<Long, Turn> table = new TreeMap<>();
        asAsked.forEach(e -> table.put(code.read(e.frame().bytes()), e.asked()));
        addHalves(table);
        return new CodeFound(code, table, asAsked.size(), examples, missing(table));
    }

    /** A value that no quarter turn has and that came for a half turn is that half turn's, if most agree. */
    private void addHalves(Map<Long, Turn> table) {
        Map<Long, Map<Face, Integer>> counts = new HashMap<>();
        for (Example example : lesson.halves(group.frames())) {
            long value = code.read(example.frame().bytes());
            if (!table.containsKey(value)) {
                counts.computeIfAbsent(value, v -> new HashMap<>())
                        .merge(example.asked().face(), 1, Integer::sum);
            }
        }
        Map<Face, Long> chosen = new HashMap<>();
        counts.forEach((value, faces) -> {
            Face face = faces.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .orElseThrow()
                    .getKey();
            Long other = chosen.get(face);
            if (other == null || faces.get(face) > counts.get(other).get(face)) {
                chosen.put(face, value);
            }
        });
        chosen.forEach((face, value) -> table.put(value, Turn.of(face, 2)));
    }

    private static List<Turn> missing(Map<Long, Turn> table) {
        List<Turn> missing = new ArrayList<>();
        boolean hasHalves = table.values().stream().anyMatch(t -> t.quarters() == 2);
        for (Turn turn : Turn.all()) {
            if (!table.containsValue(turn) && (hasHalves || turn.quarters() != 2)) {
                missing.add(turn);
            }
        }
        return missing;
    }
}
