package fermata.analysis.hand;

import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.List;
import java.util.function.Function;

/**
 * What a solver says the hand did, held against the turns that were heard. The words begin in the hold of the centres:
 * U up, F in front. A half turn may have been heard as two quarters or the other way about, and turns about one axis in
 * any order; everything else must agree.
 */
public sealed interface StatedHand {
    /** What the kind makes of it: exactly one of these is asked. */
    <T> T fold(Function<? super Agrees, ? extends T> agrees, Function<? super Differs, ? extends T> differs);

    /**
     * The words make the turns.
     *
     * @param reading what they say, every probability 1
     */
    record Agrees(HandReading reading) implements StatedHand {
        @Override
        public <T> T fold(
                Function<? super Agrees, ? extends T> agrees, Function<? super Differs, ? extends T> differs) {
            return agrees.apply(this);
        }
    }

    /**
     * They do not.
     *
     * @param turn the first heard turn, from 0, that they do not make; the number of heard turns if they make more
     * @param heard that turn in the core frame, or empty
     * @param said the core-frame turn that the words make there, or empty
     */
    record Differs(int turn, String heard, String said) implements StatedHand {
        @Override
        public <T> T fold(
                Function<? super Agrees, ? extends T> agrees, Function<? super Differs, ? extends T> differs) {
            return differs.apply(this);
        }
    }

    /** Compares. Cost: linear in turns. */
    static StatedHand of(Sequence words, List<Turn> heard) {
        return new WordComparison(words, heard).run();
    }
}
