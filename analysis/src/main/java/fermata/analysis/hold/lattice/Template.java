package fermata.analysis.hold.lattice;

import fermata.analysis.hold.IntervalEvidence;
import fermata.analysis.hold.RotationReading;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The kinds of features. Each is a product of small vocabularies and owns a stretch of the weight vector, so a
 * feature is an int found by arithmetic and can still be written in words.
 *
 * <p>Places and layers are as the solver sees them. A turn is made by the layer that stays beside the core: a
 * wide r is an L.
 */
public enum Template {
    /** A turn, by phase. */
    TURN(0.3, Words.TURNS, Words.PHASES),
    /** Two turns in one hold. */
    TURN_PAIR(2, Words.TURNS, Words.TURNS),
    /** Three turns in one hold. */
    TURN_TRIPLE(6, Words.TURNS, Words.TURNS, Words.TURNS),
    /** Where the cross face is. */
    CROSS_AT(0.3, Words.FACES, Words.PHASES),
    /** Where the cross face is when a layer turns. */
    CROSS_AT_LAYER(1, Words.FACES, Words.FACES, Words.PHASES),
    /** Where the cross face and the first side of the slot at work are. */
    SLOT_AT(0.5, Words.FACES, Words.FACES),
    /** The same by the layer turned. */
    SLOT_AT_LAYER(1.5, Words.FACES, Words.FACES, Words.FACES),
    /** Along which of the solver's axes the axis lies that rests once edges are oriented. */
    IDLE_ALONG(0.3, Words.AXES, Words.PHASES),
    /** A hold in which a known sequence of such a length runs over the turn. */
    KNOWN(0.3, Words.LENGTHS, Words.PHASES),
    /** Where the cross face is at the first turn. */
    START_CROSS(1, Words.FACES),
    /** The hold at the first turn, against the scramble's. */
    START_HOLD(1, Words.ROTATIONS),
    /** A rotation, by how it can be read. */
    ROTATION(0.3, Words.READINGS, Words.ROTATIONS),
    /** A rotation, by the turn before it. */
    ROTATION_AFTER(0.5, Words.READINGS, Words.TURNS),
    /** A rotation, by phase and place in the stretch. */
    ROTATION_WHEN(0.3, Words.READINGS, Words.PHASES, Words.PLACES),
    /** From where to where a rotation takes the cross face. */
    ROTATION_OF_CROSS(0.3, Words.FACES, Words.FACES, Words.PHASES),
    /** How many turns the hold before a rotation lasted. */
    ROTATION_AGE(0.3, Words.AGES, Words.BROAD),
    /** A rotation between two layers. */
    ROTATION_BETWEEN(2, Words.FACES, Words.ROTATIONS, Words.FACES),
    /** A rotation and the turn before it. */
    TURN_ROTATION(2, Words.TURNS, Words.ROTATIONS),
    /** A rotation and the turn after it. */
    ROTATION_TURN(2, Words.ROTATIONS, Words.TURNS),
    /** A rotation, by where the cross face was. */
    CROSS_ROTATION(0.5, Words.FACES, Words.ROTATIONS, Words.PHASES),
    /** How long a rotation took, by how broadly it reads, phase, and whether a stretch begins with it. */
    ROTATION_PACE(0.1, Words.PACES, Words.BROAD, Words.PHASES, Words.BEGINS),
    /** How long which rotation took. */
    ROTATION_TOOK(0.1, Words.PACES, Words.ROTATIONS),
    /** How long one layer took after another in one hold. */
    LAYER_PACE(0.3, Words.PACES, Words.FACES, Words.FACES);

    /** The length of a weight vector. */
    public static final int SIZE;

    static {
        int next = 0;
        for (Template template : values()) {
            template.base = next;
            next += template.size;
        }
        SIZE = next;
    }

    private final double price;
    private final List<List<String>> words;
    private final int second;
    private final int third;
    private final int fourth;
    private final int size;
    private int base;

    @SafeVarargs
    @SuppressWarnings("varargs")
    Template(double price, List<String>... words) {
        this.price = price;
        this.words = List.of(words);
        this.second = words.length > 1 ? words[1].size() : 1;
        this.third = words.length > 2 ? words[2].size() : 1;
        this.fourth = words.length > 3 ? words[3].size() : 1;
        int product = 1;
        for (List<String> vocabulary : words) {
            product *= vocabulary.size();
        }
        this.size = product;
    }

    public int at(int a) {
        return base + a;
    }

    public int at(int a, int b) {
        return base + a * second + b;
    }

    public int at(int a, int b, int c) {
        return base + (a * second + b) * third + c;
    }

    /** Which kind a feature is of. */
    public static Template of(int feature) {
        Template template = values()[0];
        for (Template next : values()) {
            template = next.base <= feature ? next : template;
        }
        return template;
    }

    /**
     * How dear a weight of this kind is when learning. What could learn single solves by heart is dear, so that
     * what holds for all of them carries the weight: else nothing is left to teach how rarely a cube is turned
     * round.
     */
    public double price() {
        return price;
    }

    public int at(int a, int b, int c, int d) {
        return base + ((a * second + b) * third + c) * fourth + d;
    }

    /** Whether it looks at times, which no public solve has: learned from one solver's corrections alone. */
    public boolean timed() {
        return this == ROTATION_PACE || this == ROTATION_TOOK || this == LAYER_PACE;
    }

    /** Whether it looks at no more than three turns and a rotation: what a Markov model of order two sees. */
    public boolean local() {
        return this == TURN || this == TURN_PAIR || this == TURN_TRIPLE || this == ROTATION || this == ROTATION_BETWEEN;
    }

    /** The feature in words, the template's name first. */
    static String written(int feature) {
        Template template = of(feature);
        int rest = feature - template.base;
        List<String> written = new ArrayList<>();
        for (int place = template.words.size() - 1; place >= 0; place--) {
            List<String> vocabulary = template.words.get(place);
            written.add(0, vocabulary.get(rest % vocabulary.size()));
            rest /= vocabulary.size();
        }
        return template.name().toLowerCase(Locale.ROOT) + " " + String.join(" ", written);
    }

    /**
     * The feature of these words.
     *
     * @throws IllegalArgumentException naming the word that does not belong
     */
    static int parse(List<String> written) {
        Template template = ByName.TEMPLATES.get(written.get(0));
        if (template == null) {
            throw new IllegalArgumentException("no kind of feature is called \"" + written.get(0) + '"');
        }
        if (written.size() != template.words.size() + 1) {
            throw new IllegalArgumentException(
                    written.get(0) + " takes " + template.words.size() + " words, not " + (written.size() - 1));
        }
        int feature = 0;
        for (int place = 0; place < template.words.size(); place++) {
            int word = template.words.get(place).indexOf(written.get(place + 1));
            if (word < 0) {
                throw new IllegalArgumentException(
                        '"' + written.get(place + 1) + "\" is none of " + String.join(" ", template.words.get(place)));
            }
            feature = feature * template.words.get(place).size() + word;
        }
        return template.base + feature;
    }

    private static final class ByName {
        static final Map<String, Template> TEMPLATES = Arrays.stream(values())
                .collect(Collectors.toMap(one -> one.name().toLowerCase(Locale.ROOT), Function.identity()));
    }

    /** The vocabularies. */
    private static final class Words {
        static final List<String> TURNS =
                Arrays.stream(Turn.all()).map(Turn::toString).toList();
        static final List<String> FACES =
                Arrays.stream(Face.values()).map(Face::name).toList();
        static final List<String> AXES = List.of("up", "right", "front");
        static final List<String> PHASES = lower(StreamFacts.Phase.values());
        static final List<String> PLACES = lower(StreamFacts.Place.values());
        static final List<String> READINGS = lower(RotationReading.values());
        static final List<String> PACES = IntStream.range(0, IntervalEvidence.CLASSES)
                .mapToObj(pace -> "pace" + pace)
                .toList();
        static final List<String> BEGINS = List.of("begins", "amid");
        static final List<String> BROAD = List.of("wide", "own", "free");
        static final List<String> LENGTHS = List.of("5", "6", "7", "8", "9+", "11+", "13+");
        static final List<String> AGES = List.of("1", "2", "3", "4+");
        static final List<String> ROTATIONS = Orientation.all().stream()
                .map(one -> one.word().isEmpty() ? "none" : one.word().replace(" ", ""))
                .toList();

        private static List<String> lower(Enum<?>[] values) {
            return Arrays.stream(values)
                    .map(value -> value.name().toLowerCase(Locale.ROOT))
                    .toList();
        }
    }
}
