package fermata.analysis.rest;

import java.util.Locale;

/** Why a hand rested. */
public enum Cause {
    /** The next pair or block had not been found. */
    LOOK_AHEAD,
    /** A last-layer case had to be recognised. */
    RECOGNITION,
    /** The cube was turned as a whole. */
    ROTATION,
    /** The fingers were set anew. */
    REGRIP,
    /** A turn was wrong and taken back. */
    SLIP,
    /** A sequence known by heart did not come. */
    MEMORY,
    /** None of these is likely. */
    UNEXPLAINED;

    /**
     * The cause of that word.
     *
     * @throws IllegalArgumentException if it is no cause's word
     */
    public static Cause of(String written) {
        return valueOf(written.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** The word in files and on screens. */
    public String written() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
