package fermata.analysis.goal;

import fermata.decoder.cube.Axis;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * When four corner-edge pairs came over what they stand on, and in which order. The one reader of that, for stages and
 * for holds.
 *
 * <p>A pair is made at the first time after which it stands at the end of every later pair: one that happened to stand
 * and was taken apart to make another was not made yet. So the order is found from the end: the three pairs that were
 * together first, of them the two, of them the one. Of pairs that came at once the one is at work that the latest turn
 * to tell them apart moved; the others came for nothing.
 *
 * <p>Immutable. Cost: 16 looks at every time at which the base stands, then 24 orders.
 */
public final class PairGrowth {
    private static final int PAIRS = 4;
    private static final int ALL_SLOTS = 15;
    private static final List<List<Integer>> ORDERS = orders(List.of());

    private final PiecesHome home;
    private final List<Corner> around;
    /** By set of slots, when they all stood. */
    private final int[] firstWith;

    private final List<Integer> order;
    private final List<Integer> times;
    private final boolean[] told = new boolean[PAIRS];

    /**
     * Reads a solve over the whole cross of a face.
     *
     * @param around the four corners of the face; where nothing else decides, pairs come in this order
     */
    public static PairGrowth overCross(PiecesHome home, Face cross, List<Corner> around) {
        return new PairGrowth(home, cross, around, crossOf(cross));
    }

    /**
     * Reads a solve of somebody who orients edges first and builds from the two edges of the cross that lie along an
     * axis: what came before the cross, or with it, counts from when it stood with that line.
     */
    public static PairGrowth overLine(PiecesHome home, Face cross, Axis along) {
        int line = 0;
        for (Edge edge : Edge.values()) {
            boolean lies = edge.faces().stream().anyMatch(face -> face.axis() == along);
            line |= edge.touches(cross) && lies ? PiecesHome.bit(edge) : 0;
        }
        return new PairGrowth(home, cross, cornersOf(cross), line);
    }

    private PairGrowth(PiecesHome home, Face cross, List<Corner> around, int base) {
        this.home = home;
        this.around = List.copyOf(around);
        int[] pairs = around.stream().mapToInt(corner -> pair(corner, cross)).toArray();
        this.firstWith = firstWith(pairs, crossOf(cross));
        int cameWithCross = firstWith[0];
        int[] firstOverBase = base == crossOf(cross) ? firstWith : firstWith(pairs, base);
        for (int set = 0; set <= ALL_SLOTS; set++) {
            firstWith[set] = firstWith[set] == cameWithCross ? firstOverBase[set] : firstWith[set];
        }
        this.order = new ArrayList<>(earliest());
        this.times = List.of(time(order, 1), time(order, 2), time(order, 3), time(order, 4));
        for (int pair = 0; pair < PAIRS; pair++) {
            tellApart(pair);
        }
    }

    private static int crossOf(Face cross) {
        int edges = 0;
        for (Edge edge : Edge.values()) {
            edges |= edge.touches(cross) ? PiecesHome.bit(edge) : 0;
        }
        return edges;
    }

    /** The corners of a face, in the order of their names. */
    public static List<Corner> cornersOf(Face cross) {
        return Arrays.stream(Corner.values())
                .filter(corner -> corner.touches(cross))
                .toList();
    }

    private static int pair(Corner corner, Face cross) {
        for (Edge edge : Edge.values()) {
            if (!edge.touches(cross) && edge.faces().stream().allMatch(corner::touches)) {
                return PiecesHome.bit(corner) | PiecesHome.bit(edge);
            }
        }
        throw new IllegalArgumentException("corner " + corner + " has no edge beside " + cross);
    }

    /** For each set of slots, the first time at which they and what they stand on are home. */
    private int[] firstWith(int[] pairs, int base) {
        int[] first = new int[ALL_SLOTS + 1];
        Arrays.fill(first, never());
        for (int time = 0; time <= home.end() && first[ALL_SLOTS] == never(); time++) {
            for (int standing : home.at(time)) {
                if ((standing & base) == base) {
                    note(solved(standing, pairs), time, first);
                }
            }
        }
        return first;
    }

    private static int solved(int standing, int[] pairs) {
        int solved = 0;
        for (int slot = 0; slot < PAIRS; slot++) {
            solved |= (standing & pairs[slot]) == pairs[slot] ? 1 << slot : 0;
        }
        return solved;
    }

    private static void note(int solved, int time, int[] first) {
        for (int wanted = 0; wanted <= ALL_SLOTS; wanted++) {
            if ((solved & wanted) == wanted) {
                first[wanted] = Math.min(first[wanted], time);
            }
        }
    }

    private static List<List<Integer>> orders(List<Integer> begun) {
        if (begun.size() == PAIRS) {
            return List.of(begun);
        }
        List<List<Integer>> orders = new ArrayList<>();
        for (int slot = 0; slot < PAIRS; slot++) {
            if (!begun.contains(slot)) {
                List<Integer> longer = new ArrayList<>(begun);
                longer.add(slot);
                orders.addAll(orders(List.copyOf(longer)));
            }
        }
        return orders;
    }

    /** The order whose third pair comes first; of several, the one whose second does, then the first. */
    private List<Integer> earliest() {
        List<Integer> earliest = ORDERS.get(0);
        for (List<Integer> other : ORDERS) {
            int pairs = 3;
            while (pairs > 1 && time(other, pairs) == time(earliest, pairs)) {
                pairs--;
            }
            earliest = time(other, pairs) < time(earliest, pairs) ? other : earliest;
        }
        return earliest;
    }

    /** When so many of them, in an order, stand together. */
    private int time(List<Integer> slots, int pairs) {
        int set = 0;
        for (int place = 0; place < pairs; place++) {
            set |= 1 << slots.get(place);
        }
        return firstWith[set];
    }

    /** Takes the pair at work first of those that came with it. */
    private void tellApart(int pair) {
        int time = times.get(pair);
        if (time == never() || time == (pair == 0 ? base() : times.get(pair - 1))) {
            return;
        }
        List<Integer> atOnce = new ArrayList<>();
        for (int with = pair; with < PAIRS && times.get(with) == time; with++) {
            atOnce.add(order.get(with));
        }
        List<Integer> left = atOnce;
        for (int back = time; back > 0 && left.size() > 1; back--) {
            Face turned = home.turnTo(back).face();
            List<Integer> moved = left.stream()
                    .filter(slot -> around.get(slot).touches(turned))
                    .toList();
            left = moved.isEmpty() ? left : moved;
        }
        told[pair] = left.size() == 1;
        Integer atWork = left.get(0);
        atOnce.remove(atWork);
        atOnce.add(0, atWork);
        for (int with = 0; with < atOnce.size(); with++) {
            order.set(pair + with, atOnce.get(with));
        }
    }

    /** Stands where the time of something would stand that never came: one more than there are turns. */
    public int never() {
        return home.end() + 1;
    }

    /** When what the pairs stand on was home. */
    public int base() {
        return firstWith[0];
    }

    /** When 1, 2, 3 and 4 pairs stood. */
    public List<Integer> times() {
        return times;
    }

    /** The corners of the pairs, in the order in which they came. */
    public List<Corner> slots() {
        return order.stream().map(around::get).toList();
    }

    /** The corner of a pair, 1 to 4, that was at work before it stood; empty if it was none, or nobody can tell. */
    public Optional<Corner> atWork(int pair) {
        return told[pair - 1] ? Optional.of(around.get(order.get(pair - 1))) : Optional.empty();
    }

    /** How soon it grew on the whole. The face for which it is least is the one that was built on. */
    public int sumOfTimes() {
        return base() + times.stream().mapToInt(Integer::intValue).sum();
    }
}
