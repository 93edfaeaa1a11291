package fermata.analysis.hold.sensor;

import fermata.analysis.hold.Holds;
import fermata.decoder.cube.Axis;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import java.util.List;

/**
 * What an orientation is like in each hold, and how likely an error of an angle is.
 *
 * <p>An error is a small rotation: normal about nothing, with a share of wide ones (a cube held half way between two
 * holds, on its way, or tilted towards the eye) and a few readings that say nothing. Shares and the width of the wide
 * ones are our choice, not measured.
 */
final class SensedHold {
    private static final double WIDE_SHARE = 0.15;
    private static final double WIDE_RADIANS = Math.toRadians(18);
    private static final double NOTHING_SHARE = 0.0003;
    private static final double CARRIED_SHARE = 0.3;
    /** All rotations, measured as small ones are. */
    private static final double ALL_ROTATIONS = 8 * Math.PI * Math.PI;

    private static final int STEPS = 720;
    private static final Quaternion[] OF_HOLD = holds();

    private SensedHold() {}

    /** What a perfect sensor says in a hold. */
    static Quaternion exact(int hold) {
        return OF_HOLD[hold];
    }

    /** The hold that lies nearest. */
    static int nearest(Quaternion seen) {
        int nearest = 0;
        for (int hold = 1; hold < Holds.COUNT; hold++) {
            nearest = seen.angleTo(OF_HOLD[hold]) < seen.angleTo(OF_HOLD[nearest]) ? hold : nearest;
        }
        return nearest;
    }

    /** The likelihood of an error, by its angle in quarter degrees. */
    static double[] likelihoods(double noiseDegrees) {
        double[] table = new double[STEPS + 1];
        for (int step = 0; step <= STEPS; step++) {
            double angle = Math.PI * step / STEPS;
            table[step] = (1 - WIDE_SHARE - NOTHING_SHARE) * normal(angle, Math.toRadians(noiseDegrees))
                    + WIDE_SHARE * normal(angle, WIDE_RADIANS)
                    + NOTHING_SHARE / ALL_ROTATIONS;
        }
        return table;
    }

    /**
     * The likelihood of an error at a turn that may carry the core along, as a wide turn or a slice does: the core is
     * then anywhere on its way about the turn's own axis.
     *
     * @param error by angle, from {@link #likelihoods}
     * @param off by angle, from {@link #offTheWay}
     * @param axis the turn's, as the solver sees it
     */
    static double atTurn(Quaternion error, double[] straight, double[] off, Axis axis) {
        double along = switch (axis) {
            case UD -> error.y();
            case RL -> error.x();
            case FB -> error.z();
        };
        double swing = 2 * Math.acos(Math.min(1, Math.sqrt(error.w() * error.w() + along * along)));
        return (1 - CARRIED_SHARE) * straight[step(error.angle())] + CARRIED_SHARE * off[step(swing)];
    }

    /** The likelihood of lying beside the way about an axis, anywhere along it, by the angle in quarter degrees. */
    static double[] offTheWay(double noiseDegrees) {
        double spread = Math.toRadians(noiseDegrees);
        double[] table = new double[STEPS + 1];
        for (int step = 0; step <= STEPS; step++) {
            double angle = Math.PI * step / STEPS;
            table[step] =
                    Math.exp(-angle * angle / (2 * spread * spread)) / (2 * Math.PI * spread * spread * 2 * Math.PI);
        }
        return table;
    }

    /** Where in the table of {@link #likelihoods} an angle stands. */
    static int step(double angle) {
        return (int) Math.round(angle * STEPS / Math.PI);
    }

    private static double normal(double angle, double spread) {
        return Math.exp(-angle * angle / (2 * spread * spread)) / Math.pow(spread * Math.sqrt(2 * Math.PI), 3);
    }

    /** Each hold as the product of its word's rotations; x, y and z turn clockwise seen from R, U and F. */
    private static Quaternion[] holds() {
        Quaternion[] holds = new Quaternion[Holds.COUNT];
        holds[Orientation.IDENTITY.index()] = Quaternion.NONE;
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
