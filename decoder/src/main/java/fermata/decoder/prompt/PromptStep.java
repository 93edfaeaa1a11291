package fermata.decoder.prompt;

import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.Objects;

/** One thing that a drill asks for. */
public sealed interface PromptStep {
    /** The cube is solved, and nothing turns. Only the first step, and the moment that states are counted from. */
    record BeginSolved() implements PromptStep {}

    /**
     * Turns of faces.
     *
     * @param turns at least one; quarter turns against the core
     * @param pace how
     */
    record TurnFaces(List<Turn> turns, Pace pace) implements PromptStep {
        public TurnFaces {
            turns = List.copyOf(turns);
            Objects.requireNonNull(pace, "pace");
            if (turns.isEmpty()) {
                throw new IllegalArgumentException("turns is empty: nothing is asked for");
            }
        }
    }

    /** How turns are made. */
    enum Pace {
        /** One turn, and a pause. */
        SINGLE,
        /** A half turn by two quarters, one right after the other. */
        HALF,
        /** A known run, as quickly as it goes. */
        RUN
    }

    /** Nothing moves. */
    record Rest() implements PromptStep {}

    /**
     * The whole cube is turned about, no face against the others.
     *
     * @param rotation a rotation in WCA notation: x, y or z, alone, with 2 or '
     */
    record Tilt(String rotation) implements PromptStep {
        public Tilt {
            if (!rotation.matches("[xyz][2']?")) {
                throw new IllegalArgumentException(
                        "rotation \"" + rotation + "\" is none of x y z, alone, with 2 or '");
            }
        }
    }

    /** Turn freely and solve the cube: the last step; it ends when the cube is solved. */
    record Free() implements PromptStep {}
}
