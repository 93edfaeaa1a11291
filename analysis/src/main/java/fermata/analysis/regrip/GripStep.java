package fermata.analysis.regrip;

import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * All ways of a hand over one turn, in two parts: between turns it may come to rest, and the cube may be turned as a
 * whole; then a finger makes the turn, after a regrip or without. States are those of {@link GripState}.
 */
final class GripStep {
    private static final double WORTH_FOLLOWING = 1e-4;

    /**
     * One way over the turn.
     *
     * @param at the state as the turn begins
     * @param weight its probability given that state, times the likelihood ratio of the interval if the hand took hold
     *     anew
     */
    record Arc(int at, int to, boolean regrip, Finger finger, double weight) {}

    private final double stays;
    private final double rests;
    private final double drifts;
    private final List<Arc> arcs = new ArrayList<>();

    /**
     * The ways over a turn as a left hand sees it.
     *
     * @param states how likely each state is before it; ways from those that are not are left out
     */
    GripStep(Kinematics kinematics, GripTurn turn, boolean first, double[] states) {
        double rest = turn.rested() ? Kinematics.COME_TO_REST : 0;
        this.stays = (1 - turn.rotated()) * (1 - rest);
        this.rests = (1 - turn.rotated()) * rest;
        this.drifts = turn.rotated();
        double[] settled = settle(states);
        double ratio = Math.exp(turn.evidence());
        for (Face face : Face.values()) {
            double odds = turn.layers().get(face.ordinal());
            if (odds > WORTH_FOLLOWING) {
                String letter = turn.move().isFeltAt(face) ? turn.move().letter() : face.name();
                add(kinematics.ways().over(letter, turn.quarters(), first), odds, ratio, settled);
            }
        }
    }

    private void add(List<List<GripWays.Way>> ways, double odds, double ratio, double[] settled) {
        for (int at = 0; at < settled.length; at++) {
            if (settled[at] > 0) {
                for (GripWays.Way way : ways.get(at)) {
                    double weight = odds * way.weight() * (way.regrip() ? ratio : 1);
                    arcs.add(new Arc(at, way.to(), way.regrip(), way.finger(), weight));
                }
            }
        }
    }

    List<Arc> arcs() {
        return arcs;
    }

    /** How likely each state is as the turn begins, by how likely each was after the turn before. */
    double[] settle(double[] states) {
        double[] settled = new double[states.length];
        double all = 0;
        for (int state = 0; state < states.length; state++) {
            settled[state] = stays * states[state];
            all += states[state];
        }
        settled[GripState.FRESH] += rests * all;
        settled[GripState.ADRIFT] += drifts * all;
        return settled;
    }

    /** What lies ahead of each state after the turn before, by what lies ahead of each as the turn begins. */
    double[] ahead(double[] settled) {
        double anyway = rests * settled[GripState.FRESH] + drifts * settled[GripState.ADRIFT];
        return Arrays.stream(settled).map(ahead -> stays * ahead + anyway).toArray();
    }
}
