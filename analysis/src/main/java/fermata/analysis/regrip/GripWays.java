package fermata.analysis.regrip;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What may become of a hand over one kind of turn, by its state as the turn begins. Worked out once for each kind, as a
 * year of turns has only some forty. Thread-safe.
 */
final class GripWays {
    /**
     * One way.
     *
     * @param weight its probability
     */
    record Way(int to, boolean regrip, Finger finger, double weight) {}

    /** A kind of turn; before the first one nothing counts as a regrip. */
    private record Kind(String letter, List<Integer> quarters, boolean first) {}

    private final Kinematics kinematics;
    /** Never altered, only replaced by a larger one: two threads may work out the same kind, either answer is right. */
    private volatile Map<Kind, List<List<Way>>> known = Map.of();

    GripWays(Kinematics kinematics) {
        this.kinematics = kinematics;
    }

    /** The ways over a turn of a layer as a left hand sees it, by state; from each state they add up to 1. */
    List<List<Way>> over(String letter, List<Integer> quarters, boolean first) {
        Kind kind = new Kind(letter, quarters, first);
        List<List<Way>> ways = known.get(kind);
        if (ways == null) {
            ways = of(kind);
            Map<Kind, List<List<Way>>> more = new HashMap<>(known);
            more.put(kind, ways);
            known = more;
        }
        return ways;
    }

    private List<List<Way>> of(Kind kind) {
        List<List<Way>> byState = new ArrayList<>();
        for (int state = 0; state < GripState.COUNT; state++) {
            byState.add(from(state, kind));
        }
        return List.copyOf(byState);
    }

    /** The hand takes the finger and the sense that are ready rather than those that are not. */
    private List<Way> from(int state, Kind kind) {
        boolean other = kind.letter().equalsIgnoreCase("L");
        double all = 0;
        for (int quarters : kind.quarters()) {
            for (Kinematics.Share share : kinematics.fingers(kind.letter(), quarters)) {
                all += liking(share, anew(state, share.finger(), quarters, kind));
            }
        }
        List<Way> ways = new ArrayList<>();
        for (int quarters : kind.quarters()) {
            for (Kinematics.Share share : kinematics.fingers(kind.letter(), quarters)) {
                Finger finger = share.finger();
                double anew = anew(state, finger, quarters, kind);
                double chosen = liking(share, anew) / all;
                int fresh = GripState.FRESH;
                int ahead = finger != Finger.WRIST ? fresh : GripState.turned(fresh, other, -Integer.signum(quarters));
                double unset = chosen * anew * (1 - Kinematics.SET_AHEAD);
                add(ways, new Way(GripState.after(state, finger, other, quarters), false, finger, chosen * (1 - anew)));
                add(ways, new Way(GripState.after(fresh, finger, other, quarters), true, finger, unset));
                add(
                        ways,
                        new Way(
                                GripState.after(ahead, finger, other, quarters),
                                true,
                                finger,
                                chosen * anew * Kinematics.SET_AHEAD));
            }
        }
        return List.copyOf(ways);
    }

    private static double liking(Kinematics.Share share, double anew) {
        return share.share() * (1 - Kinematics.PASSED_OVER * anew);
    }

    private double anew(int state, Finger finger, int quarters, Kind kind) {
        if (kind.first()) {
            return 0;
        }
        boolean other = kind.letter().equalsIgnoreCase("L");
        double odds = kinematics.anew(GripState.left(state), finger);
        boolean beyond =
                finger == Finger.WRIST && Math.abs(GripState.wrist(state, other) + quarters) > Kinematics.WRIST_REACH;
        return beyond ? Math.max(odds, Kinematics.BEYOND_REACH) : odds;
    }

    private static void add(List<Way> ways, Way way) {
        if (way.weight() > 0) {
            ways.add(way);
        }
    }
}
