package fermata.analysis.hold.lattice;

import fermata.analysis.hold.learning.HoldTrainer;
import fermata.analysis.hold.sequence.SequenceBook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/**
 * Everything learned.
 *
 * @param weights of the features
 * @param book sequences that are known
 */
public record HoldModel(HoldWeights weights, SequenceBook book) {
    private static final String WEIGHTS = "weights.txt";
    private static final String SEQUENCES = "sequences.txt";

    public HoldModel {
        Objects.requireNonNull(weights, "weights");
        Objects.requireNonNull(book, "book");
    }

    /** What was learned from the public reconstructions with {@link HoldTrainer.Settings#USUAL}. */
    public static HoldModel shipped() {
        return Shipped.MODEL;
    }

    /** The text forms of {@link #shipped()}, weights and then sequences, for a name of it. Cost: reads two files. */
    public static String shippedText() {
        return text(WEIGHTS) + text(SEQUENCES);
    }

    /** A Markov model of order two, blind to the state: what others are held against. */
    public static HoldModel markov() {
        return Markov.MODEL;
    }

    /** Read once, when first asked for. */
    private static final class Shipped {
        static final HoldModel MODEL =
                new HoldModel(HoldWeights.parse(text(WEIGHTS)), SequenceBook.parse(text(SEQUENCES)));
    }

    /** Likewise. */
    private static final class Markov {
        static final HoldModel MODEL = new HoldModel(HoldWeights.parse(text("markov-weights.txt")), SequenceBook.EMPTY);
    }

    private static String text(String name) {
        try (InputStream stream = HoldModel.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("the learned file " + name + " is missing from the jar");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
