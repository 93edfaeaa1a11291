package fermata.decoder.cube;

import java.util.Arrays;

/**
 * What the eight corners and twelve edges of a cube are doing, seen against its centres.
 *
 * <p>A state is also the permutation that leads to it from solved, so states multiply: {@code a.then(b)} is what
 * {@code b}'s turns make of {@code a}. Corner twist counts clockwise thirds (0..2), edge flip 0 or 1, each at the
 * place's reference sticker ({@link Corner}, {@link Edge}). Every instance has each cubie exactly once, but may be
 * unreachable by turning (a twisted corner, say): {@link #legality()} tells.
 *
 * <p>Immutable and thread-safe. {@link #apply(Turn)} and {@link #then(CubeState)} cost 20 table steps and one small
 * allocation.
 */
public final class CubeState {
    /** The solved cube. */
    public static final CubeState SOLVED = new CubeState(identity(8), new byte[8], identity(12), new byte[12]);

    private static final CubeState[] OF_TURN = CubeStates.ofTurns();

    private final byte[] cornerAt;
    private final byte[] twistAt;
    private final byte[] edgeAt;
    private final byte[] flipAt;

    /** Takes ownership of its arrays; callers in this package hand over fresh ones that hold each cubie once. */
    CubeState(byte[] cornerAt, byte[] twistAt, byte[] edgeAt, byte[] flipAt) {
        this.cornerAt = cornerAt;
        this.twistAt = twistAt;
        this.edgeAt = edgeAt;
        this.flipAt = flipAt;
    }

    /**
     * A state from cubie numbers, as a device's snapshot or a table of cubies gives them.
     *
     * @param corners for each corner place in declaration order, the ordinal of the corner there
     * @param twists for each corner place, the twist 0..2
     * @param edges for each edge place in declaration order, the ordinal of the edge there
     * @param flips for each edge place, the flip 0 or 1
     * @throws IllegalArgumentException if a cubie is missing or doubled, or a twist or flip is out of range
     */
    public static CubeState ofCubies(int[] corners, int[] twists, int[] edges, int[] flips) {
        return new CubeState(
                CubeStates.permutation("corner", corners, 8),
                CubeStates.inRange("twist", twists, 8, 3),
                CubeStates.permutation("edge", edges, 12),
                CubeStates.inRange("flip", flips, 12, 2));
    }

    /** The state one turn away from solved. */
    public static CubeState of(Turn turn) {
        return OF_TURN[turn.index()];
    }

    /** The state after one more turn. */
    public CubeState apply(Turn turn) {
        return then(OF_TURN[turn.index()]);
    }

    /** The state after these turns, first to last. */
    public CubeState apply(Iterable<Turn> turns) {
        CubeState state = this;
        for (Turn turn : turns) {
            state = state.apply(turn);
        }
        return state;
    }

    /** The state after this one's turns and then {@code next}'s. */
    public CubeState then(CubeState next) {
        byte[] corners = new byte[8];
        byte[] twists = new byte[8];
        for (int place = 0; place < 8; place++) {
            int from = next.cornerAt[place];
            corners[place] = cornerAt[from];
            twists[place] = (byte) ((twistAt[from] + next.twistAt[place]) % 3);
        }
        byte[] edges = new byte[12];
        byte[] flips = new byte[12];
        for (int place = 0; place < 12; place++) {
            int from = next.edgeAt[place];
            edges[place] = edgeAt[from];
            flips[place] = (byte) (flipAt[from] ^ next.flipAt[place]);
        }
        return new CubeState(corners, twists, edges, flips);
    }

    /** The state whose turns take this one's back: {@code s.then(s.inverse())} is solved. */
    public CubeState inverse() {
        byte[] corners = new byte[8];
        byte[] twists = new byte[8];
        for (int place = 0; place < 8; place++) {
            corners[cornerAt[place]] = (byte) place;
            twists[cornerAt[place]] = (byte) ((3 - twistAt[place]) % 3);
        }
        byte[] edges = new byte[12];
        byte[] flips = new byte[12];
        for (int place = 0; place < 12; place++) {
            edges[edgeAt[place]] = (byte) place;
            flips[edgeAt[place]] = flipAt[place];
        }
        return new CubeState(corners, twists, edges, flips);
    }

    /** The turns that lead from {@code reference} to this state, as a state: solved if and only if both are equal. */
    public CubeState relativeTo(CubeState reference) {
        return reference.inverse().then(this);
    }

    /** The corner cubie in a place. */
    public Corner cornerAt(Corner place) {
        return Corner.ofIndex(cornerAt[place.ordinal()]);
    }

    /** Clockwise thirds by which the corner in a place is twisted, 0..2. */
    public int twistAt(Corner place) {
        return twistAt[place.ordinal()];
    }

    /** The edge cubie in a place. */
    public Edge edgeAt(Edge place) {
        return Edge.ofIndex(edgeAt[place.ordinal()]);
    }

    /** Whether the edge in a place is flipped: 1, or 0. */
    public int flipAt(Edge place) {
        return flipAt[place.ordinal()];
    }

    /** The place a corner cubie is in. Cost: up to 8 steps. */
    public Corner placeOf(Corner cubie) {
        int place = 0;
        while (cornerAt[place] != cubie.ordinal()) {
            place++;
        }
        return Corner.ofIndex(place);
    }

    /** The place an edge cubie is in. Cost: up to 12 steps. */
    public Edge placeOf(Edge cubie) {
        int place = 0;
        while (edgeAt[place] != cubie.ordinal()) {
            place++;
        }
        return Edge.ofIndex(place);
    }

    /** Whether the corner that belongs here is here, untwisted. */
    public boolean isSolved(Corner place) {
        return cornerAt[place.ordinal()] == place.ordinal() && twistAt[place.ordinal()] == 0;
    }

    /** Whether the edge that belongs here is here, unflipped. */
    public boolean isSolved(Edge place) {
        return edgeAt[place.ordinal()] == place.ordinal() && flipAt[place.ordinal()] == 0;
    }

    /** The places whose own cubie is there, the right way round, as bits: corners by ordinal, then edges, 8 on. */
    public int home() {
        return homeAfter(SOLVED);
    }

    /** How many of the twenty cubies are in another place or turned round. Cost: 20 table steps. */
    public int misplaced() {
        return Corner.values().length + Edge.values().length - Integer.bitCount(home());
    }

    /** {@link #home()} after one more turn. Cost: 20 table steps, no allocation. */
    public int homeAfter(Turn turn) {
        return homeAfter(OF_TURN[turn.index()]);
    }

    private int homeAfter(CubeState next) {
        int home = 0;
        for (int place = 0; place < 8; place++) {
            int from = next.cornerAt[place];
            if (cornerAt[from] == place && (twistAt[from] + next.twistAt[place]) % 3 == 0) {
                home |= 1 << place;
            }
        }
        for (int place = 0; place < 12; place++) {
            int from = next.edgeAt[place];
            if (edgeAt[from] == place && flipAt[from] == next.flipAt[place]) {
                home |= 1 << 8 + place;
            }
        }
        return home;
    }

    /** Whether every cubie is at home. */
    public boolean isSolved() {
        return equals(SOLVED);
    }

    /** Whether turning can reach this state from solved, and if not, why. */
    public Legality legality() {
        return Legality.of(this);
    }

    /** The 54 face letters in sticker order (faces U R F D L B), as a cube held by its centres shows them. */
    public String facelets() {
        return Facelets.write(this);
    }

    private static byte[] identity(int size) {
        byte[] places = new byte[size];
        for (int place = 0; place < size; place++) {
            places[place] = (byte) place;
        }
        return places;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CubeState that
                && Arrays.equals(cornerAt, that.cornerAt)
                && Arrays.equals(twistAt, that.twistAt)
                && Arrays.equals(edgeAt, that.edgeAt)
                && Arrays.equals(flipAt, that.flipAt);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Arrays.hashCode(cornerAt) + Arrays.hashCode(twistAt))
                + 31 * Arrays.hashCode(edgeAt)
                + Arrays.hashCode(flipAt);
    }

    /** The facelet string. */
    @Override
    public String toString() {
        return facelets();
    }
}
