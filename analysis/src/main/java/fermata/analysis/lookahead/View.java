package fermata.analysis.lookahead;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Mirror;

/**
 * Which of the 54 places the solver sees, as the cube is held in front of the chest.
 *
 * <p>The tables are for the left hand: L lies in the palm, the thumb covers the lower left of F, the fingers hold B
 * and D. The right hand is the mirror image; two hands leave the same faces in view less both thumbs. Each row of a
 * table is a face, its nine places row by row as seen from outside; {@code x} is visible. Common practice, no source.
 */
public enum View {
    /** The cube at rest. */
    PLAIN("U xxx xxx xxx", "F xxx .xx .xx", "R xxx xxx xxx"),
    /** A small tilt that lets the top strip of the palm side come up. */
    SIDE_TILT("U xxx xxx xxx", "F xxx .xx .xx", "R xxx xxx xxx", "L xxx ... ..."),
    /** A small tilt that lets the nearer strip of the back come round. */
    BACK_TILT("U xxx xxx xxx", "F xxx .xx .xx", "R xxx xxx xxx", "B x.. x.. x..");

    private static final int PLACES = 54;

    private final boolean[] left;
    private final boolean[] right;
    private final boolean[] both;

    View(String... rows) {
        this.left = read(rows);
        this.right = new boolean[PLACES];
        this.both = new boolean[PLACES];
        for (int place = 0; place < PLACES; place++) {
            right[place] = left[Mirror.ofPlace(place)];
        }
        for (int place = 0; place < PLACES; place++) {
            both[place] = left[place] && right[place];
        }
    }

    /** Whether a place (0..53, named as the solver sees the cube) is in view. An unknown hand is taken as two. */
    public boolean shows(Hand hand, int handPlace) {
        return switch (hand) {
            case LEFT -> left[handPlace];
            case RIGHT -> right[handPlace];
            case TWO, UNKNOWN -> both[handPlace];
        };
    }

    private static boolean[] read(String[] rows) {
        boolean[] shown = new boolean[PLACES];
        for (String row : rows) {
            int first = 9 * Face.of(row.charAt(0)).ordinal();
            String places = row.substring(1).replace(" ", "");
            for (int place = 0; place < 9; place++) {
                shown[first + place] = places.charAt(place) == 'x';
            }
        }
        return shown;
    }
}
