package fermata.analysis.hold.lattice;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.Holds;
import fermata.analysis.hold.RotationReading;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Turn;
import java.util.Arrays;
import java.util.List;

/**
 * The features of one solve, found by arithmetic whenever asked for. What depends on the hold alone, on how
 * long it has lasted, and on a change of hold is asked for apart, as the lattice adds them apart.
 *
 * <p>Not thread-safe: each question fills {@link #found}, whose first {@link #count} numbers are the answer.
 */
public final class Features {
    /** A hold's age counts turns made in it before, up to this many. */
    static final int AGES = 4;

    private static final int UNTIMED = 8;

    public final StreamFacts facts;
    int[] found = new int[32];
    int count;
    private final int[][] covered;
    private final int from;
    private final List<Turn> turns;
    private final int[] core;
    private final int cross;
    private final int[] slotSide;
    private final int[] phase;
    private final int[] place;
    private final boolean[] slice;
    /** By turn how long it was in coming, or null where there are no times. */
    private final int[] pace;

    /** How many features a change of hold has. */
    final int ofRotation;

    private final char[][] ofRotations;
    private final byte[][] broad;

    public Features(StreamFacts facts, SequenceBook book, String group) {
        this(facts, book.covered(facts.turns, group), 0, facts.turns.size());
    }

    /** The features of a solve whose times may be known. */
    public Features(StreamFacts facts, SequenceBook book, HoldEvidence evidence) {
        this(facts, book.covered(facts.turns, ""), 0, facts.turns.size(), paces(evidence, facts.turns.size()));
        for (int turn = 2; turn < core.length; turn++) {
            slice[turn] &= evidence.mayBeOneMove(turn - 1);
        }
    }

    /** The features of a part of a solve: turns from the first number to before the second. */
    public Features(StreamFacts facts, int[][] covered, int from, int to) {
        this(facts, covered, from, to, null);
    }

    private Features(StreamFacts facts, int[][] covered, int from, int to, int[] pace) {
        this.pace = pace;
        this.ofRotation = pace == null ? UNTIMED : UNTIMED + 2;
        this.covered = covered;
        this.facts = facts;
        this.from = from;
        this.turns = facts.turns.subList(from, to);
        this.core = turns.stream().mapToInt(Turn::index).toArray();
        this.cross = facts.crossFace.ordinal();
        this.slotSide = new int[core.length];
        this.phase = new int[core.length];
        this.place = new int[core.length];
        for (int turn = 0; turn < core.length; turn++) {
            phase[turn] = facts.phase(from + turn).ordinal();
            place[turn] = facts.place(from + turn).ordinal();
            slotSide[turn] = firstSide(facts.slot(from + turn));
        }
        this.slice = new boolean[core.length];
        for (int turn = 2; turn < core.length; turn++) {
            slice[turn] = RotationReading.isSlice(turns.get(turn - 2), turns.get(turn - 1));
        }
        this.ofRotations = new char[core.length][];
        this.broad = new byte[core.length][];
    }

    private static int[] paces(HoldEvidence evidence, int turns) {
        if (turns < 2 || evidence.pace(1).isEmpty()) {
            return null;
        }
        int[] paces = new int[turns];
        for (int turn = 1; turn < turns; turn++) {
            paces[turn] = evidence.pace(turn).orElseThrow();
        }
        return paces;
    }

    /** The side face that comes first clockwise about the cross face, or -1. */
    private int firstSide(Corner slot) {
        if (slot == null) {
            return -1;
        }
        int at = slot.faces().indexOf(facts.crossFace);
        return slot.faces().get((at + 1) % 3).ordinal();
    }

    public int[][] covered() {
        return covered;
    }

    int size() {
        return core.length;
    }

    /** The number of the turn seen in a hold. */
    int seen(int turn, int hold) {
        return Holds.TURN_SEEN[hold][core[turn]];
    }

    private static int at(int hold, int coreFace) {
        return Holds.faceOf(Holds.TURN_SEEN[hold][coreFace * 3]);
    }

    private void add(int feature) {
        found[count++] = feature;
    }

    /** What speaks for a hold at a turn, whatever came before. */
    void ofHold(int turn, int hold) {
        count = 0;
        int seen = seen(turn, hold);
        int layer = Holds.faceOf(seen);
        int crossAt = at(hold, cross);
        add(Template.TURN.at(seen, phase[turn]));
        add(Template.CROSS_AT.at(crossAt, phase[turn]));
        add(Template.CROSS_AT_LAYER.at(crossAt, layer, phase[turn]));
        if (slotSide[turn] >= 0) {
            add(Template.SLOT_AT.at(crossAt, at(hold, slotSide[turn])));
            add(Template.SLOT_AT_LAYER.at(crossAt, at(hold, slotSide[turn]), layer));
        }
        if (facts.idle() != null) {
            int along = at(hold, facts.idle().ordinal()) % 3;
            add(Template.IDLE_ALONG.at(along, phase[turn]));
        }
        int known = covered[from + turn][hold];
        if (known >= SequenceBook.SHORTEST) {
            int length = known < 9 ? known - SequenceBook.SHORTEST : Math.min(6, 4 + (known - 9) / 2);
            add(Template.KNOWN.at(length, phase[turn]));
        }
        if (from + turn == 0) {
            add(Template.START_CROSS.at(crossAt));
            add(Template.START_HOLD.at(hold));
        }
    }

    /** What speaks for a hold that has lasted {@code age} turns already (3: three or more), besides. */
    void ofAge(int turn, int hold, int age) {
        count = 0;
        if (age >= 1 && turn >= 1) {
            add(Template.TURN_PAIR.at(seen(turn - 1, hold), seen(turn, hold)));
        }
        if (age >= 1 && turn >= 1 && pace != null) {
            int before = Holds.faceOf(seen(turn - 1, hold));
            add(Template.LAYER_PACE.at(pace[turn], before, Holds.faceOf(seen(turn, hold))));
        }
        if (age >= 2 && turn >= 2) {
            add(Template.TURN_TRIPLE.at(seen(turn - 2, hold), seen(turn - 1, hold), seen(turn, hold)));
        }
    }

    /** What speaks for a change of hold before a turn (from 1). */
    void ofRotation(int turn, int from, int to) {
        count = 0;
        int rotation = Holds.ROTATION[from][to];
        RotationReading reading = reading(turn, from, to);
        int how = reading.ordinal();
        int last = seen(turn - 1, from);
        int next = seen(turn, to);
        int crossWas = at(from, cross);
        add(Template.ROTATION.at(how, rotation));
        add(Template.ROTATION_AFTER.at(how, last));
        add(Template.ROTATION_WHEN.at(how, phase[turn], place[turn]));
        add(Template.ROTATION_OF_CROSS.at(crossWas, at(to, cross), phase[turn]));
        add(Template.ROTATION_BETWEEN.at(Holds.faceOf(last), rotation, Holds.faceOf(next)));
        add(Template.TURN_ROTATION.at(last, rotation));
        add(Template.ROTATION_TURN.at(rotation, next));
        add(Template.CROSS_ROTATION.at(crossWas, rotation, phase[turn]));
        if (pace != null) {
            int amid = place[turn] == StreamFacts.Place.FIRST.ordinal() ? 0 : 1;
            add(Template.ROTATION_PACE.at(pace[turn], reading.broad, phase[turn], amid));
            add(Template.ROTATION_TOOK.at(pace[turn], rotation));
        }
    }

    /**
     * What speaks for each change of hold before a turn, {@link #ofRotation} features each, by 24 * from + to.
     * Kept, as learning asks for it again and again: half a megabyte a solve.
     */
    char[] ofRotations(int turn) {
        if (ofRotations[turn] == null) {
            char[] all = new char[Holds.COUNT * Holds.COUNT * ofRotation];
            for (int change = 0; change < Holds.COUNT * Holds.COUNT; change++) {
                if (change / Holds.COUNT != change % Holds.COUNT) {
                    ofRotation(turn, change / Holds.COUNT, change % Holds.COUNT);
                    for (int feature = 0; feature < ofRotation; feature++) {
                        all[change * ofRotation + feature] = (char) found[feature];
                    }
                }
            }
            ofRotations[turn] = all;
        }
        return ofRotations[turn];
    }

    /** What speaks for a change of hold of this broad kind after so many turns. */
    int ofRotationAge(int age, int broad) {
        return Template.ROTATION_AGE.at(age, broad);
    }

    /** By 24 * from + to: how each change of hold before a turn reads, broadly. Kept likewise. */
    byte[] broad(int turn) {
        if (broad[turn] == null) {
            byte[] all = new byte[Holds.COUNT * Holds.COUNT];
            for (int change = 0; change < all.length; change++) {
                int from = change / Holds.COUNT;
                int to = change % Holds.COUNT;
                all[change] = (byte) (from == to ? 0 : reading(turn, from, to).broad);
            }
            broad[turn] = all;
        }
        return broad[turn];
    }

    /** How the change of hold before a turn reads. */
    RotationReading reading(int turn, int from, int to) {
        return RotationReading.of(Holds.ROTATION[from][to], slice[turn], seen(turn - 1, from), seen(turn, to));
    }

    /** The place of the layer of a turn in each hold. */
    int[] layers(int turn) {
        int[] layers = new int[Holds.COUNT];
        Arrays.setAll(layers, hold -> Holds.faceOf(seen(turn, hold)));
        return layers;
    }
}
