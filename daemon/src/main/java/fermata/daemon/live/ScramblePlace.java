package fermata.daemon.live;

import fermata.decoder.cube.Turn;
import java.util.List;

/**
 * How far a scramble is done.
 *
 * @param done turns that are done
 * @param half whether the next one, a half turn, is half done
 * @param mending turns that lead back to the scramble after a wrong one; empty if none was made
 * @param astray whether the cube is somewhere else altogether: it must be solved before the scramble can be done
 */
public record ScramblePlace(int done, boolean half, List<Turn> mending, boolean astray) {
    public ScramblePlace {
        mending = List.copyOf(mending);
        if (done < 0 || astray && !mending.isEmpty()) {
            throw new IllegalArgumentException("done " + done + " is negative, or astray has mending " + mending);
        }
    }
}
