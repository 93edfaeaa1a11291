package fermata.rehearsal.truth;

import fermata.decoder.cube.Span;
import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * How a cube was scrambled.
 *
 * @param words the turns in notation, as announced or as made up
 * @param announced whether the words were given to the solver by whoever logs, or made up by the hands
 * @param hold the hold in which the words were turned, as two letters; {@code UF} if as meant
 * @param turns the turns it took
 * @param fromSolved whether the cube was solved before
 */
public record ScrambleTruth(String words, boolean announced, String hold, Span turns, boolean fromSolved) {
    public ScrambleTruth {
        Objects.requireNonNull(words, "words");
        Orientation.ofLetters(hold);
        Objects.requireNonNull(turns, "turns");
    }
}
