package fermata.analysis.beat;

import fermata.decoder.cube.Span;
import java.util.Objects;

/**
 * Raw turns that are one thing. The turns themselves stay as they were heard.
 *
 * @param kind what they are
 * @param turns which, in the indexes of the solve
 */
public record TurnSpan(Kind kind, Span turns) {
    /** What a run of turns is. */
    public enum Kind {
        /** A half turn heard as two quarters. */
        DOUBLE,
        /** A slice heard as two faces. */
        SLICE,
        /** A turn, or several, taken back; counted once however many turns it took. */
        SLIP
    }

    public TurnSpan {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(turns, "turns");
    }
}
