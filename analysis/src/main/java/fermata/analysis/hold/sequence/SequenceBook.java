package fermata.analysis.hold.sequence;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Holds;
import fermata.analysis.hold.Writing;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Sequences that hands are known to turn, with their holds: common ones, ones read off other solves, the
 * solver's own.
 *
 * <p>Where a long piece of one is found in a stream, it says how the cube was held. As text, one sequence a
 * line in the hand's notation; {@code #} begins a comment. Immutable, thread-safe.
 */
public final class SequenceBook {
    /** Shorter pieces are found by chance too often to say anything. */
    public static final int SHORTEST = LastLayerPiece.SHORTEST;

    private static final int KEY = 4;

    /**
     * How much likelier, as a natural logarithm and for each turn, it is that a solver's own sequence is turned as it
     * was typed. Our choice, not learned: over a whole sequence it outweighs any habit of the many, which may come to 3
     * a turn.
     */
    private static final double OWN = 6;

    /** A book without a sequence. */
    public static final SequenceBook EMPTY = new SequenceBook(List.of());

    /** @param weight how much likelier, as a natural logarithm for each turn, a solver's own is turned as it stands */
    private record Entry(HoldTrack track, String group, double weight) {
        Entry(HoldTrack track, String group) {
            this(track, group, OWN);
        }
    }

    private record Spot(Entry entry, int turn) {}

    private final List<Entry> entries;
    private final Map<Integer, List<Spot>> byStart = new HashMap<>();

    private SequenceBook(List<Entry> entries) {
        this.entries = List.copyOf(entries);
        for (Entry entry : entries) {
            for (int turn = 0; turn + KEY <= entry.track().size(); turn++) {
                int key = key(entry.track().turns(), turn, 0);
                byStart.computeIfAbsent(key, any -> new ArrayList<>()).add(new Spot(entry, turn));
            }
        }
    }

    /**
     * Reads the text form.
     *
     * @throws IllegalArgumentException naming the line that is no sequence
     */
    public static SequenceBook parse(String text) {
        List<Entry> entries = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int line = 0; line < lines.size(); line++) {
            String words = lines.get(line).replaceFirst("#.*", "").strip();
            if (!words.isEmpty()) {
                try {
                    entries.add(new Entry(HoldTrack.of(Sequence.parse(words), Orientation.IDENTITY), ""));
                } catch (RuntimeException problem) {
                    throw new IllegalArgumentException(
                            "line " + (line + 1) + " of the sequences: " + problem.getMessage(), problem);
                }
            }
        }
        return new SequenceBook(entries);
    }

    /** This book and the last layers of the examples, which are not used on examples of their own group. */
    public SequenceBook with(List<HoldExample> examples) {
        List<Entry> more = new ArrayList<>(entries);
        for (HoldExample example : examples) {
            lastLayer(example.start(), example.track()).ifPresent(track -> more.add(new Entry(track, example.group())));
        }
        return new SequenceBook(more);
    }

    /** The sequences of this book and then those of another. */
    public SequenceBook with(SequenceBook other) {
        List<Entry> both = new ArrayList<>(entries);
        both.addAll(other.entries);
        return new SequenceBook(both);
    }

    /**
     * A book of the last layer of a solve whose holds are known: empty if it has fewer than {@link #SHORTEST} turns.
     *
     * @param start the state before the first turn, seen against the centres
     */
    public static SequenceBook ofLastLayer(CubeState start, HoldTrack track) {
        return new SequenceBook(lastLayer(start, track).stream()
                .map(last -> new Entry(last, ""))
                .toList());
    }

    /** A book of learned ones, each as loud as it is sure and none louder than what was typed. */
    static SequenceBook ofLearned(List<LearnedSequence> learned) {
        return new SequenceBook(learned.stream()
                .map(one -> new Entry(one.track(), "", Math.min(OWN, one.weight())))
                .toList());
    }

    /** As seen from the hold in which it was begun. */
    private static Optional<HoldTrack> lastLayer(CubeState start, HoldTrack track) {
        int from = Tilting.first(new StreamFacts(start, track.turns()), StreamFacts.Phase.ORIENT);
        if (track.size() - from < SHORTEST) {
            return Optional.empty();
        }
        return Optional.of(track.part(from, track.size()));
    }

    /** The text form; each sequence once, in the order of the book. */
    public String print() {
        Map<String, Boolean> seen = new LinkedHashMap<>();
        entries.forEach(entry -> seen.put(Writing.text(entry.track()), true));
        return String.join("\n", seen.keySet()) + (seen.isEmpty() ? "" : "\n");
    }

    /**
     * By turn and hold: the length of the longest piece in the book that runs over this turn in this hold; 0 if
     * none of {@link #SHORTEST} or more. Cost: 24 look-ups a turn.
     *
     * @param group entries of this group are left out
     */
    public int[][] covered(List<Turn> turns, String group) {
        int[][] covered = new int[turns.size()][Holds.COUNT];
        for (int from = 0; from + SHORTEST <= turns.size(); from++) {
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                for (Spot spot : byStart.getOrDefault(key(turns, from, hold), List.of())) {
                    if (group.isEmpty() || !spot.entry().group().equals(group)) {
                        cover(covered, turns, from, Orientation.ofIndex(hold), spot);
                    }
                }
            }
        }
        return covered;
    }

    /**
     * What it says of a stream that a solver's own book has a sequence of it: that the sequence was turned as the book
     * has it. Only in the last layer, and only of whole sequences, but for a first or last turn that may have run
     * together with an adjustment. Cost: 24 look-ups a turn.
     *
     * @param start the state before the first turn, seen against the centres
     */
    public HoldEvidence evidence(CubeState start, List<Turn> turns) {
        if (entries.isEmpty()) {
            return HoldEvidence.NONE;
        }
        double[][] turned = new double[turns.size()][Holds.COUNT];
        int first = Tilting.first(new StreamFacts(start, turns), StreamFacts.Phase.ORIENT);
        for (int from = first; from + SHORTEST <= turns.size(); from++) {
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                for (Spot spot : byStart.getOrDefault(key(turns, from, hold), List.of())) {
                    HoldTrack known = spot.entry().track();
                    int length = length(turns, from, Orientation.ofIndex(hold), spot);
                    for (int turn = 0; length >= Math.max(SHORTEST, known.size() - 1) && turn < length; turn++) {
                        int there = Orientation.ofIndex(hold)
                                .then(known.holds().get(spot.turn() + turn))
                                .index();
                        turned[from + turn][there] = Math.max(
                                turned[from + turn][there], spot.entry().weight());
                    }
                }
            }
        }
        return new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                return turned[turn][hold.index()];
            }
        };
    }

    private static void cover(int[][] covered, List<Turn> turns, int from, Orientation hold, Spot spot) {
        HoldTrack known = spot.entry().track();
        int length = length(turns, from, hold, spot);
        if (length >= SHORTEST) {
            for (int turn = 0; turn < length; turn++) {
                int there = hold.then(known.holds().get(spot.turn() + turn)).index();
                covered[from + turn][there] = Math.max(covered[from + turn][there], length);
            }
        }
    }

    /** How many turns of a stream are those of an entry, from a turn of either. */
    private static int length(List<Turn> turns, int from, Orientation hold, Spot spot) {
        HoldTrack known = spot.entry().track();
        int length = 0;
        while (from + length < turns.size()
                && spot.turn() + length < known.size()
                && hold.toHand(turns.get(from + length)) == known.turns().get(spot.turn() + length)) {
            length++;
        }
        return length;
    }

    private static int key(List<Turn> turns, int from, int hold) {
        int key = 0;
        for (int turn = from; turn < from + KEY && turn < turns.size(); turn++) {
            key = key * 18 + Holds.TURN_SEEN[hold][turns.get(turn).index()];
        }
        return key;
    }
}
