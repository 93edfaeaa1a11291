package fermata.analysis.event;

import java.util.Objects;

/**
 * Where an event comes from.
 *
 * @param cube the name the owner gave the cube; not a device address
 * @param solver the name the solver goes by on this board
 * @param hand which hand it was, as the solver stated it
 */
public record Origin(String cube, String solver, Hand hand) {
    public Origin {
        requireNamed("cube", cube);
        requireNamed("solver", solver);
        Objects.requireNonNull(hand, "hand");
    }

    private static void requireNamed(String what, String name) {
        if (Objects.requireNonNull(name, what).isBlank()) {
            throw new IllegalArgumentException("the " + what + " of an event has a blank name; say \"unknown\"");
        }
    }
}
