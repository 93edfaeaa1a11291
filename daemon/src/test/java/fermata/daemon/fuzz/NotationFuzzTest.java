package fermata.daemon.fuzz;

import fermata.decoder.notation.NotationException;
import fermata.decoder.notation.Sequence;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Spoiled notation is a sequence of at most 10,000 moves, or a complaint that names column and token. */
class NotationFuzzTest {
    private static final int MOST_MOVES = 10_000;
    /** Repeated groups are what costs: 10,000 moves, nested 32 deep. */
    private static final long MOST_BYTES = 100_000;

    private static final Mutations NOTATION = new Mutations(
            Mutations.texts(List.of(
                    "R U R' U' r2' M' x y2 z' 2Rw 3Rw2' // the end\nF2 B\u2019",
                    "[R U: (F2 D)3] [L', U2]' ((R U)2 (R' F))10' E2 S u d' f b2 l",
                    "D2 F' U2 L B' R2 F D' L2 U R' B2 D F2 U' L' B R U2 F' D",
                    "((((((((((R)2)2)2)2)2)2)2)2)2)2")),
            List.of(
                    "(",
                    ")",
                    "[",
                    "]",
                    ":",
                    ",",
                    ")999",
                    "'",
                    "\u2032",
                    "2'",
                    "//",
                    "\n",
                    "Rw",
                    "2",
                    "\u00a0",
                    "\u2028",
                    "\u0000",
                    "))))",
                    "((((((((((((((((",
                    "[[[[[[[[[[[[",
                    "R U ",
                    "x",
                    "0",
                    "99999999999"));

    private static int read(byte[] input, SplittableRandom random) {
        String text = new String(input, StandardCharsets.UTF_8);
        Sequence read;
        try {
            read = Sequence.parse(text);
        } catch (NotationException documented) {
            check(documented.column() >= 1 && !documented.getMessage().isBlank(), "a complaint without a place");
            return 1;
        }
        check(read.moves().size() <= MOST_MOVES, read.moves().size() + " moves");
        if (read.moves().size() < 200) {
            check(Sequence.parse(read.toString()).equals(read), "what is written is not what was read");
            check(read.then(read.inverse()).state().isSolved(), "the inverse does not take it back");
        }
        return 1;
    }

    private static void check(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }

    @Test
    void shouldComplainWithAPlaceWhenNotationIsSpoiled() {
        Fuzzing.shortly("notation", 5_000, NOTATION, MOST_BYTES, NotationFuzzTest::read);
    }

    @Test
    @Tag("fuzz")
    void shouldComplainWithAPlaceHoweverLongNotationIsSpoiled() {
        Fuzzing.at("notation", 15, NOTATION, MOST_BYTES, NotationFuzzTest::read);
    }
}
