package fermata.analysis.hold;

import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.List;

/** Readings made by hand, for tests of what is done with them. */
public final class HoldReadings {
    private HoldReadings() {}

    /** A reading that has no doubt. */
    public static HoldReading certain(HoldTrack track) {
        double[] sure = new double[track.size()];
        Arrays.fill(sure, 1);
        Double[] rotated = new Double[track.size()];
        Arrays.setAll(rotated, turn -> turn == 0 || track.rotationBefore(turn) == Orientation.IDENTITY ? 0.0 : 1.0);
        return Writing.of(track, sure, LayerOdds.certain(track), List.of(rotated), 0);
    }
}
