package fermata.analysis.beat;

import java.util.Objects;

/**
 * Where in a solve an interval lies: how likely a rest is depends on it.
 *
 * @param stretch the part of the solve that the second turn belongs to
 * @param holdUp the kind of place
 */
public record Place(Stretch stretch, HoldUp holdUp) {
    /** How many places there are. */
    public static final int COUNT = Stretch.values().length * HoldUp.values().length;

    public Place {
        Objects.requireNonNull(stretch, "stretch");
        Objects.requireNonNull(holdUp, "holdUp");
    }

    public int index() {
        return stretch.ordinal() * HoldUp.values().length + holdUp.ordinal();
    }
}
