package fermata.analysis.regrip;

import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.List;

/**
 * All ways from one state of the hand over one turn to the next, with their probabilities. A state is where the hand
 * was left and how far each wrist has gone, -1..1; of one hand the second wrist never moves.
 */
final class GripStep {
    private static final int WRISTS = 2 * Kinematics.WRIST_REACH + 1;
    static final int STATES = Left.values().length * WRISTS * WRISTS;
    private static final double WORTH_FOLLOWING = 1e-4;

    /**
     * One way.
     *
     * @param weight its probability given the state it comes from, times the likelihood ratio of the interval if the
     *     hand took hold anew
     */
    record Arc(int from, int to, boolean regrip, Finger finger, double weight) {}

    private final Kinematics kinematics;
    private final GripTurn turn;
    private final boolean first;
    private final double ratio;
    private final List<Arc> arcs = new ArrayList<>();

    private GripStep(Kinematics kinematics, GripTurn turn, boolean first) {
        this.kinematics = kinematics;
        this.turn = turn;
        this.first = first;
        this.ratio = Math.exp(turn.evidence());
    }

    /**
     * The ways over a turn as a left hand sees it.
     *
     * @param states those that may come before it
     */
    static List<Arc> arcs(Kinematics kinematics, GripTurn turn, boolean first, boolean[] states) {
        GripStep step = new GripStep(kinematics, turn, first);
        for (int state = 0; state < STATES; state++) {
            if (states[state]) {
                step.leave(state);
            }
        }
        return step.arcs;
    }

    static int state(Left left, int wrist, int otherWrist) {
        return (left.ordinal() * WRISTS + wrist + Kinematics.WRIST_REACH) * WRISTS
                + otherWrist
                + Kinematics.WRIST_REACH;
    }

    private static Left left(int state) {
        return Left.values()[state / (WRISTS * WRISTS)];
    }

    private static int wrist(int state, boolean other) {
        return (other ? state % WRISTS : state / WRISTS % WRISTS) - Kinematics.WRIST_REACH;
    }

    /** Before the turn the hand may have come to rest, and the cube may have been turned as a whole. */
    private void leave(int state) {
        double rest = turn.rested() ? Kinematics.COME_TO_REST : 0;
        makeLayers(state, state, (1 - turn.rotated()) * (1 - rest));
        makeLayers(state, state(Left.HOME, 0, 0), (1 - turn.rotated()) * rest);
        makeLayers(state, state(Left.ADRIFT, 0, 0), turn.rotated());
    }

    private void makeLayers(int from, int at, double weight) {
        if (weight <= 0) {
            return;
        }
        for (Face face : Face.values()) {
            double odds = turn.layers().get(face.ordinal());
            if (odds > WORTH_FOLLOWING) {
                String letter = isSeenAt(face, turn.move()) ? turn.move().letter() : face.name();
                make(from, at, letter, weight * odds);
            }
        }
    }

    /** Whether the centres feel a move there: a wide turn across from its letter, a slice on both its sides. */
    private static boolean isSeenAt(Face face, Move move) {
        if (move instanceof Move.Layer layer) {
            return layer.turn().face() == face;
        } else if (move instanceof Move.Wide wide) {
            return wide.face().opposite() == face;
        }
        return ((Move.SliceTurn) move).slice().follows().sharesAxisWith(face);
    }

    /** The hand takes the finger and the sense that are ready rather than those that are not. */
    private void make(int from, int at, String letter, double weight) {
        boolean other = letter.equalsIgnoreCase("L");
        double all = 0;
        for (int quarters : turn.quarters()) {
            for (Kinematics.Share share : kinematics.fingers(letter, quarters)) {
                all += liking(share, anew(at, share.finger(), other, quarters));
            }
        }
        for (int quarters : turn.quarters()) {
            for (Kinematics.Share share : kinematics.fingers(letter, quarters)) {
                Finger finger = share.finger();
                double anew = anew(at, finger, other, quarters);
                double chosen = weight * liking(share, anew) / all;
                add(from, after(at, finger, other, quarters), false, finger, chosen * (1 - anew));
                addRegrip(from, finger, other, quarters, chosen * anew * ratio);
            }
        }
    }

    private static double liking(Kinematics.Share share, double anew) {
        return share.share() * (1 - Kinematics.PASSED_OVER * anew);
    }

    private void addRegrip(int from, Finger finger, boolean other, int quarters, double weight) {
        int fresh = state(Left.HOME, 0, 0);
        int ahead = finger != Finger.WRIST ? fresh : turned(fresh, other, -Integer.signum(quarters));
        add(from, after(fresh, finger, other, quarters), true, finger, weight * (1 - Kinematics.SET_AHEAD));
        add(from, after(ahead, finger, other, quarters), true, finger, weight * Kinematics.SET_AHEAD);
    }

    private double anew(int at, Finger finger, boolean other, int quarters) {
        if (first) {
            return 0;
        }
        double odds = kinematics.anew(left(at), finger);
        boolean beyond = finger == Finger.WRIST && Math.abs(wrist(at, other) + quarters) > Kinematics.WRIST_REACH;
        return beyond ? Math.max(odds, Kinematics.BEYOND_REACH) : odds;
    }

    private static int after(int at, Finger finger, boolean other, int quarters) {
        Left left = Left.by(finger);
        int moved = state(left, wrist(at, false), wrist(at, true));
        return finger == Finger.WRIST ? turned(moved, other, quarters) : moved;
    }

    private static int turned(int at, boolean other, int quarters) {
        int reach = Kinematics.WRIST_REACH;
        int wrist = Math.max(-reach, Math.min(reach, wrist(at, other) + quarters));
        return other ? state(left(at), wrist(at, false), wrist) : state(left(at), wrist, wrist(at, true));
    }

    private void add(int from, int to, boolean regrip, Finger finger, double weight) {
        if (weight > 0) {
            arcs.add(new Arc(from, to, regrip, finger, weight));
        }
    }
}
