package fermata.analysis.method;

import fermata.analysis.goal.Pieces;
import fermata.decoder.search.Slot;
import java.util.ArrayList;
import java.util.List;

/** One of the 24 orders in which four pairs may come. */
final class PairOrder {
    private static final List<PairOrder> ALL = all(List.of());

    private final List<Slot> slots;
    /** The slots up to each place, as {@link Pieces#pairs} has them. */
    private final int[] sets = new int[4];

    private PairOrder(List<Slot> slots) {
        this.slots = slots;
        int set = 0;
        for (int place = 0; place < sets.length; place++) {
            set |= 1 << slots.get(place).ordinal();
            sets[place] = set;
        }
    }

    private static List<PairOrder> all(List<Slot> begun) {
        if (begun.size() == 4) {
            return List.of(new PairOrder(begun));
        }
        List<PairOrder> orders = new ArrayList<>();
        for (Slot slot : Slot.values()) {
            if (!begun.contains(slot)) {
                List<Slot> longer = new ArrayList<>(begun);
                longer.add(slot);
                orders.addAll(all(List.copyOf(longer)));
            }
        }
        return orders;
    }

    /**
     * The order whose third pair comes first; of several, the one whose second does, then the first.
     *
     * @param firstWith by set of slots, when they are all solved
     */
    static PairOrder earliest(int[] firstWith) {
        PairOrder earliest = ALL.get(0);
        for (PairOrder order : ALL) {
            if (order.isBefore(earliest, firstWith)) {
                earliest = order;
            }
        }
        return earliest;
    }

    private boolean isBefore(PairOrder other, int[] firstWith) {
        int place = 2;
        while (place > 0 && firstWith[sets[place]] == firstWith[other.sets[place]]) {
            place--;
        }
        return firstWith[sets[place]] < firstWith[other.sets[place]];
    }

    List<Slot> slots() {
        return slots;
    }

    /** When 1, 2, 3 and 4 of them are solved. */
    List<Integer> times(int[] firstWith) {
        return List.of(firstWith[sets[0]], firstWith[sets[1]], firstWith[sets[2]], firstWith[sets[3]]);
    }
}
