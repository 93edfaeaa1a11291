package fermata.analysis.hold;

import java.util.Arrays;

/** Readings made by hand, for tests of what is done with them. */
public final class HoldReadings {
    private HoldReadings() {}

    /** A reading that has no doubt. */
    public static HoldReading certain(HoldTrack track) {
        double[] sure = new double[track.size()];
        Arrays.fill(sure, 1);
        return Writing.of(track, sure, LayerOdds.certain(track), 0);
    }
}
