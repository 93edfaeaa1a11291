package fermata.decoder.finding;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Finds where the code of a turn stands: a field whose values and the twelve quarter turns are one to one, or one field
 * for the face and one for the direction. Cost: a read of every field of up to eight bits for each example.
 */
final class CodeSearch {
    /** Of the examples; a slip in thirty, a lost frame in a hundred and a late one leave far more. */
    private static final double LEAST_AGREEING = 0.8;

    private static final int LEAST_EXAMPLES = 24;
    /** Each turn comes three times or more, and one of them may be lost. */
    private static final int LEAST_OF_EITHER = 2;

    private static final int QUARTERS = 12;
    private static final int WIDEST = 8;

    private final FrameGroup group;
    private final Lesson lesson;
    private final BitSet barred;
    private final List<Example> examples;

    /** In a group of frames, of whose bits those that are {@code taken} are a check's. */
    CodeSearch(FrameGroup group, Lesson lesson, BitSet taken) {
        this.group = group;
        this.lesson = lesson;
        this.examples = lesson.singles(group.frames());
        this.barred = (BitSet) taken.clone();
        addBarred();
    }

    /** Bits that move and do not follow the turn, or too seldom to tell. */
    private void addBarred() {
        for (int bit = 0; bit < group.length() * 8; bit++) {
            BitField field = new BitField(bit, 1, Order.LITTLE, false);
            long ones = examples.stream()
                    .filter(e -> field.read(e.frame().bytes()) == 1)
                    .count();
            boolean isStill = ones == 0 || ones == examples.size();
            boolean isSeldom = Math.min(ones, examples.size() - ones) < LEAST_OF_EITHER;
            int following = FieldVote.following(field, examples, Function.<Turn>identity());
            if (!isStill && (isSeldom || following < LEAST_AGREEING * examples.size())) {
                barred.set(bit);
            }
        }
    }

    /** The code, if the group's frames hold one. */
    Optional<CodeFound> find() {
        if (examples.size() < LEAST_EXAMPLES) {
            return Optional.empty();
        }
        List<BitField> whole = best(Function.identity(), QUARTERS, 4);
        if (!whole.isEmpty()) {
            return Optional.of(finished(whole.stream().map(TurnCode::of).toList()));
        }
        List<BitField> faces = best(Turn::face, Face.values().length, 3);
        List<BitField> directions = best(Turn::quarters, 2, 1);
        List<TurnCode> codes = faces.stream()
                .flatMap(face -> directions.stream()
                        .filter(d -> d.order() == face.order())
                        .map(d -> TurnCode.of(face, d)))
                .toList();
        return codes.isEmpty() ? Optional.empty() : Optional.of(finished(codes));
    }

    /** The narrowest of the fields that follow the key best. */
    private <K> List<BitField> best(Function<Turn, K> key, int keys, int narrowest) {
        List<BitField> fields = new ArrayList<>();
        int most = 0;
        for (int width = narrowest; width <= WIDEST; width++) {
            for (Order order : Order.values()) {
                for (int at = 0; at + width <= group.length() * 8; at++) {
                    BitField field = new BitField(at, width, order, false);
                    if (BitPlace.covered(field).intersects(barred)) {
                        continue;
                    }
                    FieldVote<K> vote = FieldVote.of(field, examples, key);
                    boolean follows = vote.keys() == keys
                            && vote.isOneToOne()
                            && vote.agreeing() >= LEAST_AGREEING * examples.size();
                    if (follows && vote.agreeing() > most) {
                        most = vote.agreeing();
                        fields.clear();
                    }
                    if (follows && vote.agreeing() == most) {
                        fields.add(field);
                    }
                }
            }
        }
        int width = fields.stream().mapToInt(BitField::widthBits).min().orElse(0);
        return fields.stream().filter(f -> f.widthBits() == width).toList();
    }

    /** Of codes that tell the turns equally well, the one beside which most bits follow the turn too. */
    private CodeFound finished(List<TurnCode> narrow) {
        TurnCode code = narrow.stream()
                .map(this::widened)
                .max(Comparator.comparingInt(TurnCode::widthBits))
                .orElseThrow();
        return new CodeTable(group, lesson, code, asAsked(code), examples.size()).found();
    }

    private TurnCode widened(TurnCode narrow) {
        return new CodeWidening(
                        group.length(),
                        asAsked(narrow),
                        barred,
                        lesson.halves(group.frames()),
                        lesson.runs(group.frames()))
                .widened(narrow);
    }

    private List<Example> asAsked(TurnCode code) {
        Map<Turn, Long> values = vote(code).values();
        return examples.stream()
                .filter(e -> values.getOrDefault(e.asked(), Long.MIN_VALUE)
                        == code.read(e.frame().bytes()))
                .toList();
    }

    private FieldVote<Turn> vote(TurnCode code) {
        return FieldVote.of(code, examples, Function.identity());
    }
}
