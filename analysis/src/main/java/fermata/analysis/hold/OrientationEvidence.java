package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import java.util.List;

/**
 * An orientation sensor in the core as evidence for the hold before each turn.
 *
 * <p>The error is normal about the hold's own orientation, with a share of readings that say nothing (the cube
 * on its way, half tilted). A sensor without a compass drifts about the vertical: the drift is followed from
 * turn to turn by a fixed share of the error left over, so it must be slow against the turns (less than some 10
 * degrees a turn).
 */
public final class OrientationEvidence implements HoldEvidence {
    private static final double NOTHING_SAID = 0.02;
    private static final double FOLLOWED = 0.3;
    private static final Quaternion[] OF_HOLD = holds();

    private final double[][] logLikelihood;

    /**
     * Evidence of these readings.
     *
     * @param beforeTurns before each turn, the rotation that takes the core's axes (R, U, F to x, y, z) to the
     * solver's;     at the first turn the drift is taken to be nothing
     * @param spreadDegrees the sensor's and the hand's error, standard deviation of the angle
     */
    public OrientationEvidence(List<Quaternion> beforeTurns, double spreadDegrees) {
        if (!(spreadDegrees > 0)) {
            throw new IllegalArgumentException("a spread of " + spreadDegrees + " degrees is not above 0");
        }
        double spread = Math.toRadians(spreadDegrees);
        this.logLikelihood = new double[beforeTurns.size()][Holds.COUNT];
        double drift = 0;
        for (int turn = 0; turn < beforeTurns.size(); turn++) {
            Quaternion seen = Quaternion.about(0, 1, 0, -drift).after(beforeTurns.get(turn));
            int nearest = 0;
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                double angle = error(seen, hold).angle();
                double likely = (1 - NOTHING_SAID) * Math.exp(-angle * angle / (2 * spread * spread)) + NOTHING_SAID;
                logLikelihood[turn][hold] = Math.log(likely);
                nearest = logLikelihood[turn][hold] > logLikelihood[turn][nearest] ? hold : nearest;
            }
            drift += FOLLOWED * error(seen, nearest).yaw();
        }
    }

    @Override
    public double ofHold(int turn, Orientation hold) {
        return logLikelihood[turn][hold.index()];
    }

    /** What a perfect sensor says in a hold. */
    public static Quaternion exact(Orientation hold) {
        return OF_HOLD[hold.index()];
    }

    private static Quaternion error(Quaternion seen, int hold) {
        return seen.after(OF_HOLD[hold].inverse());
    }

    /** Each hold as the product of its word's rotations; x, y and z turn clockwise seen from R, U and F. */
    private static Quaternion[] holds() {
        Quaternion[] holds = new Quaternion[Holds.COUNT];
        holds[Orientation.IDENTITY.index()] = Quaternion.about(0, 1, 0, 0);
        for (int found = 1; found < Holds.COUNT; ) {
            for (Orientation hold : Orientation.all()) {
                for (Face like : List.of(Face.R, Face.U, Face.F)) {
                    Orientation next = hold.then(Orientation.turning(like, 1));
                    if (holds[hold.index()] != null && holds[next.index()] == null) {
                        holds[next.index()] = quarter(like).after(holds[hold.index()]);
                        found++;
                    }
                }
            }
        }
        return holds;
    }

    private static Quaternion quarter(Face like) {
        double clockwise = -Math.PI / 2;
        return Quaternion.about(like == Face.R ? 1 : 0, like == Face.U ? 1 : 0, like == Face.F ? 1 : 0, clockwise);
    }
}
