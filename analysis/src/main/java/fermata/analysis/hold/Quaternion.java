package fermata.analysis.hold;

/**
 * A rotation as a unit quaternion.
 *
 * @param w the real part
 * @param x to the solver's right
 * @param y up
 * @param z towards the solver
 */
public record Quaternion(double w, double x, double y, double z) {
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

    /** The part of the rotation that is about the vertical, in radians, -pi..pi (swing-twist decomposition). */
    public double yaw() {
        double yaw = 2 * Math.atan2(y, w);
        return yaw > Math.PI ? yaw - 2 * Math.PI : yaw < -Math.PI ? yaw + 2 * Math.PI : yaw;
    }
}
