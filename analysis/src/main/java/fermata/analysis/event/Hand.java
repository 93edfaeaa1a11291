package fermata.analysis.event;

import java.util.Locale;

/** Which hand turns the cube, as the solver stated it. Never inferred. */
public enum Hand {
    /** The left hand alone. */
    LEFT,
    /** The right hand alone. */
    RIGHT,
    /** Both hands. */
    TWO,
    /** Nobody said. */
    UNKNOWN;

    /** The word in files and on screens: the name in lower case. */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The hand of its {@link #written()} word. */
    public static Hand of(String word) {
        for (Hand hand : values()) {
            if (hand.written().equals(word)) {
                return hand;
            }
        }
        throw new IllegalArgumentException("hand \"" + word + "\" is none of left, right, two, unknown");
    }
}
