package fermata.analysis.hold.sequence;

import fermata.decoder.cube.Axis;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * What the whole stream of a solve says about where the solver was, before any hold is known: the cross face,
 * the phase and the pair at work at each turn. All in the core frame, so the same for every hold.
 *
 * <p>The cross face is the one whose cross and pairs come first on the whole. Cost: linear in turns, some 100
 * steps each.
 */
public final class StreamFacts {
    /** Until the cross stands (or what else comes before the first pair), until four pairs stand, until the
     * last layer is oriented, after that. */
    public enum Phase {
        CROSS,
        PAIRS,
        ORIENT,
        PERMUTE
    }

    /** Where in its stretch of work (a cross, a pair, a last-layer step) a turn stands. */
    public enum Place {
        FIRST,
        SECOND,
        LAST,
        AMID
    }

    private static final int PAIRS = 4;
    /** A solver may break the orientation for one pair; one who has it by chance for the last pair never sought it. */
    private static final double NEARLY_ALL = 0.8;

    public final List<Turn> turns;
    public final Face crossFace;
    private int[] reached;
    private int oriented;
    private final Corner[] slots = new Corner[PAIRS + 1];
    private final Phase[] phases;
    private final Place[] places;
    private final int[] stretches;
    private final Axis idle;

    /**
     * Reads a solve once. Cost: linear in turns, some 100 steps each.
     *
     * @param start the state before the first turn, seen against the centres
     * @param turns in the core frame, to the solved cube or not
     */
    public StreamFacts(CubeState start, List<Turn> turns) {
        this.turns = turns;
        List<CubeState> states = new ArrayList<>();
        states.add(start);
        for (Turn turn : turns) {
            states.add(states.get(states.size() - 1).apply(turn));
        }
        Face best = Face.D;
        int[] soonest = null;
        for (Face face : Face.values()) {
            int[] times = reached(states, face, null);
            if (soonest == null || sum(times) < sum(soonest)) {
                best = face;
                soonest = times;
            }
        }
        this.crossFace = best;
        this.stretches = new int[turns.size()];
        this.phases = new Phase[turns.size()];
        this.places = new Place[turns.size()];
        settle(states, soonest);
        this.idle = orientedAxis(states);
        if (idle != null) {
            settle(states, reached(states, best, idle));
        }
    }

    /** Lays out the stretches by when cross (or line) and pairs were reached. */
    private void settle(List<CubeState> states, int[] times) {
        this.reached = times;
        this.oriented = oriented(states);
        for (int pair = 1; pair <= PAIRS; pair++) {
            slots[pair] = newSlot(states, pair);
        }
        fillPhases();
    }

    private static int sum(int[] times) {
        int sum = 0;
        for (int time : times) {
            sum += time;
        }
        return sum;
    }

    /**
     * For 0..4 pairs, after how many turns the cross and that many pairs first stood; turns + 1 if never. With
     * an idle axis the two cross edges along it do for the cross: blocks are built from there.
     */
    private static int[] reached(List<CubeState> states, Face cross, Axis idle) {
        int[] times = new int[PAIRS + 1];
        int next = 0;
        for (int turn = 0; turn < states.size() && next <= PAIRS; turn++) {
            int pairs = crossStands(states.get(turn), cross, idle) ? pairs(states.get(turn), cross) : -1;
            while (next <= pairs) {
                times[next++] = turn;
            }
        }
        while (next <= PAIRS) {
            times[next++] = states.size();
        }
        return times;
    }

    private static boolean crossStands(CubeState state, Face cross, Axis idle) {
        for (Edge edge : Edge.values()) {
            boolean needed = idle == null || edge.faces().stream().anyMatch(face -> face.axis() == idle);
            if (edge.touches(cross) && needed && !state.isSolved(edge)) {
                return false;
            }
        }
        return true;
    }

    private static int pairs(CubeState state, Face cross) {
        int pairs = 0;
        for (Corner corner : Corner.values()) {
            pairs += corner.touches(cross) && pairStands(state, corner, cross) ? 1 : 0;
        }
        return pairs;
    }

    private static boolean pairStands(CubeState state, Corner corner, Face cross) {
        if (!state.isSolved(corner)) {
            return false;
        }
        for (Edge edge : Edge.values()) {
            if (!edge.touches(cross) && edge.faces().stream().allMatch(corner::touches)) {
                return state.isSolved(edge);
            }
        }
        throw new IllegalStateException("corner " + corner + " has no edge beside " + cross);
    }

    private int oriented(List<CubeState> states) {
        int first = crossFace.opposite().ordinal() * 9;
        for (int turn = reached[PAIRS]; turn < states.size(); turn++) {
            String seen = states.get(turn).facelets().substring(first, first + 9);
            if (seen.chars().allMatch(letter -> letter == seen.charAt(4))) {
                return turn;
            }
        }
        return states.size();
    }

    /** The slot filled by a pair; of two at once the one that the latest turn to tell them apart moved, or null. */
    private Corner newSlot(List<CubeState> states, int pair) {
        int at = reached[pair];
        List<Corner> filled = new ArrayList<>();
        for (Corner corner : Corner.values()) {
            if (at < states.size()
                    && corner.touches(crossFace)
                    && pairStands(states.get(at), corner, crossFace)
                    && !pairStands(states.get(reached[pair - 1]), corner, crossFace)) {
                filled.add(corner);
            }
        }
        for (int turn = at - 1; turn >= 0 && filled.size() > 1; turn--) {
            Face face = turns.get(turn).face();
            List<Corner> moved =
                    filled.stream().filter(corner -> corner.touches(face)).toList();
            filled = moved.isEmpty() ? filled : moved;
        }
        return filled.size() == 1 ? filled.get(0) : null;
    }

    private void fillPhases() {
        for (int turn = 0; turn < turns.size(); turn++) {
            int stretch = 0;
            while (stretch <= PAIRS && reached[stretch] <= turn) {
                stretch++;
            }
            if (stretch > PAIRS && oriented <= turn) {
                stretch++;
            }
            stretches[turn] = stretch;
            phases[turn] = stretch == 0
                    ? Phase.CROSS
                    : stretch <= PAIRS ? Phase.PAIRS : stretch == PAIRS + 1 ? Phase.ORIENT : Phase.PERMUTE;
        }
        for (int turn = 0; turn < turns.size(); turn++) {
            places[turn] = begins(turn)
                    ? Place.FIRST
                    : begins(turn - 1)
                            ? Place.SECOND
                            : turn + 1 == turns.size() || begins(turn + 1) ? Place.LAST : Place.AMID;
        }
    }

    private boolean begins(int turn) {
        return turn == 0 || stretches[turn] != stretches[turn - 1];
    }

    /** The axis about which all edges are oriented before nearly all turns of the pairs, or null. */
    private Axis orientedAxis(List<CubeState> states) {
        List<CubeState> pairs =
                states.subList(Math.min(reached[0], states.size()), Math.min(reached[PAIRS], states.size()));
        Axis oriented = null;
        long most = 0;
        for (Axis axis : Axis.values()) {
            long many = pairs.stream()
                    .filter(state -> axis != crossFace.axis() && OrientedEdges.all(state, axis))
                    .count();
            if (many > most && many > NEARLY_ALL * pairs.size()) {
                oriented = axis;
                most = many;
            }
        }
        return oriented;
    }

    public Phase phase(int turn) {
        return phases[turn];
    }

    public Place place(int turn) {
        return places[turn];
    }

    /** The corner of the pair being made, or null outside the pairs. */
    public Corner slot(int turn) {
        return phases[turn] == Phase.PAIRS ? slots[stretches[turn]] : null;
    }

    /** Whether the pairs were made with edges already oriented. */
    public boolean edgesFirst() {
        return idle != null;
    }

    /** The axis that rests in the pairs when edges come first, or null. */
    public Axis idle() {
        return idle;
    }
}
