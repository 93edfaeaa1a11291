package fermata.decoder.orientation;

import fermata.decoder.cube.Face;

/**
 * A rotation as a unit quaternion: how a cube's axes (x to R, y to U, z to F) lie against the world's (y up).
 * Immutable, thread-safe; every operation is a handful of multiplications.
 *
 * @param w the real part
 * @param x to the right
 * @param y up
 * @param z towards the viewer
 */
public record Quaternion(double w, double x, double y, double z) {
    /** No rotation. */
    public static final Quaternion NONE = new Quaternion(1, 0, 0, 0);

    private static final double SLACK = 0.01;

    public Quaternion {
        double norm = w * w + x * x + y * y + z * z;
        if (!(Math.abs(norm - 1) <= SLACK)) {
            throw new IllegalArgumentException(
                    "quaternion " + w + ' ' + x + ' ' + y + ' ' + z + " has the squared norm " + norm + ", not 1");
        }
    }

    /** The rotation about an axis (need not be of unit length) by an angle, the right-hand rule giving its sense. */
    public static Quaternion about(double x, double y, double z, double radians) {
        double length = Math.sqrt(x * x + y * y + z * z);
        double sine = length == 0 ? 0 : Math.sin(radians / 2) / length;
        return new Quaternion(length == 0 ? 1 : Math.cos(radians / 2), x * sine, y * sine, z * sine);
    }

    /** The rotation of four components of any length above 0. */
    public static Quaternion scaled(double w, double x, double y, double z) {
        double length = Math.sqrt(w * w + x * x + y * y + z * z);
        return new Quaternion(w / length, x / length, y / length, z / length);
    }

    /** The unit vector out of a face of the cube: x, y and z. */
    public static double[] axisOutOf(Face face) {
        return switch (face) {
            case R -> new double[] {1, 0, 0};
            case L -> new double[] {-1, 0, 0};
            case U -> new double[] {0, 1, 0};
            case D -> new double[] {0, -1, 0};
            case F -> new double[] {0, 0, 1};
            case B -> new double[] {0, 0, -1};
        };
    }

    /**
     * The rotation that takes the axes x, y and z to three others, each a unit vector of three components: at right
     * angles, right-handed (Shepperd 1978, the branch with the largest component).
     */
    public static Quaternion takingAxesTo(double[] x, double[] y, double[] z) {
        double[] squared = {
            1 + x[0] + y[1] + z[2], 1 + x[0] - y[1] - z[2], 1 - x[0] + y[1] - z[2], 1 - x[0] - y[1] + z[2]
        };
        int largest = 0;
        for (int component = 1; component < 4; component++) {
            largest = squared[component] > squared[largest] ? component : largest;
        }
        return switch (largest) {
            case 0 -> scaled(squared[0], y[2] - z[1], z[0] - x[2], x[1] - y[0]);
            case 1 -> scaled(y[2] - z[1], squared[1], x[1] + y[0], z[0] + x[2]);
            case 2 -> scaled(z[0] - x[2], x[1] + y[0], squared[2], y[2] + z[1]);
            default -> scaled(x[1] - y[0], z[0] + x[2], y[2] + z[1], squared[3]);
        };
    }

    /** The rotation that does {@code first} and then this. */
    public Quaternion after(Quaternion first) {
        return new Quaternion(
                w * first.w - x * first.x - y * first.y - z * first.z,
                w * first.x + x * first.w + y * first.z - z * first.y,
                w * first.y - x * first.z + y * first.w + z * first.x,
                w * first.z + x * first.y - y * first.x + z * first.w);
    }

    /** The rotation that takes this one back. */
    public Quaternion inverse() {
        return new Quaternion(w, -x, -y, -z);
    }

    /** The angle of the rotation in radians, 0..pi. */
    public double angle() {
        return 2 * Math.atan2(Math.sqrt(x * x + y * y + z * z), Math.abs(w));
    }

    /** The angle between two rotations in radians, 0..pi. */
    public double angleTo(Quaternion other) {
        double cosine = Math.abs(w * other.w + x * other.x + y * other.y + z * other.z);
        return 2 * Math.acos(Math.min(1, cosine));
    }

    /** The rotation on the shortest way from this one to another, a share (0..1) of the angle along. */
    public Quaternion towards(Quaternion other, double share) {
        Quaternion way = other.after(inverse());
        double sense = way.w < 0 ? -1 : 1;
        return about(sense * way.x, sense * way.y, sense * way.z, share * way.angle())
                .after(this);
    }

    /** The part of the rotation that is about the vertical, in radians, -pi..pi (swing-twist decomposition). */
    public double yaw() {
        double yaw = 2 * Math.atan2(y, w);
        return yaw > Math.PI ? yaw - 2 * Math.PI : yaw < -Math.PI ? yaw + 2 * Math.PI : yaw;
    }
}
