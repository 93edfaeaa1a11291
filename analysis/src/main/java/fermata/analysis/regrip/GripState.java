package fermata.analysis.regrip;

/**
 * The states of a hand by number: where it was left and how far each wrist has gone, -1..1; of one hand the second
 * wrist never moves.
 */
final class GripState {
    private static final int WRISTS = 2 * Kinematics.WRIST_REACH + 1;
    static final int COUNT = Left.values().length * WRISTS * WRISTS;
    /** Every finger in its place, both wrists at rest. */
    static final int FRESH = of(Left.HOME, 0, 0);
    /** The cube was turned as a whole, the wrists are at rest. */
    static final int ADRIFT = of(Left.ADRIFT, 0, 0);

    private static final Left[] LEFTS = Left.values();

    private GripState() {}

    static int of(Left left, int wrist, int otherWrist) {
        return (left.ordinal() * WRISTS + wrist + Kinematics.WRIST_REACH) * WRISTS
                + otherWrist
                + Kinematics.WRIST_REACH;
    }

    static Left left(int state) {
        return LEFTS[state / (WRISTS * WRISTS)];
    }

    static int wrist(int state, boolean other) {
        return (other ? state % WRISTS : state / WRISTS % WRISTS) - Kinematics.WRIST_REACH;
    }

    /** The state after a finger made a turn. */
    static int after(int state, Finger finger, boolean other, int quarters) {
        int moved = of(Left.by(finger), wrist(state, false), wrist(state, true));
        return finger == Finger.WRIST ? turned(moved, other, quarters) : moved;
    }

    /** The state after a wrist went so far, or as far as it goes. */
    static int turned(int state, boolean other, int quarters) {
        int reach = Kinematics.WRIST_REACH;
        int wrist = Math.max(-reach, Math.min(reach, wrist(state, other) + quarters));
        return other ? of(left(state), wrist(state, false), wrist) : of(left(state), wrist, wrist(state, true));
    }
}
