package fermata.analysis.hold.lattice;

import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.LayerOdds;
import fermata.analysis.hold.Writing;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.Collections;

/** The least that any reading must beat: the cube is held as it was scrambled and never rotated, without a doubt. */
public final class NeverRotates {
    private NeverRotates() {}

    /** Reads a stream. */
    public static HoldReading infer(HoldQuestion question) {
        int turns = question.turns().size();
        HoldTrack track = new HoldTrack(question.turns(), Collections.nCopies(turns, Orientation.IDENTITY));
        double[] sure = new double[turns];
        Arrays.fill(sure, 1);
        return Writing.of(track, sure, LayerOdds.certain(track), Collections.nCopies(track.size(), 0.0), 0);
    }
}
