package fermata.decoder.cube;

/**
 * Whether a state can be reached from solved by turning faces, and if not, what stands against it.
 *
 * <p>The three conditions are the classical ones: the twists of all corners add up to a whole turn, the flips of all
 * edges to an even number, and the two permutations have the same parity. Of all assemblies one in twelve meets them.
 */
public enum Legality {
    LEGAL("can be reached by turning"),
    TWISTED_CORNER("the corner twists do not add up to a multiple of three: a corner was twisted by hand"),
    FLIPPED_EDGE("an odd number of edges is flipped: an edge was flipped by hand"),
    SWAPPED_PAIR("the parities of corners and edges differ: two pieces were swapped by hand");

    private final String reason;

    Legality(String reason) {
        this.reason = reason;
    }

    /** One clause, for a message. */
    public String reason() {
        return reason;
    }

    static Legality of(CubeState state) {
        int twists = 0;
        int[] corners = new int[8];
        for (Corner place : Corner.values()) {
            twists += state.twistAt(place);
            corners[place.ordinal()] = state.cornerAt(place).ordinal();
        }
        int flips = 0;
        int[] edges = new int[12];
        for (Edge place : Edge.values()) {
            flips += state.flipAt(place);
            edges[place.ordinal()] = state.edgeAt(place).ordinal();
        }
        if (twists % 3 != 0) {
            return TWISTED_CORNER;
        }
        if (flips % 2 != 0) {
            return FLIPPED_EDGE;
        }
        return isOdd(corners) == isOdd(edges) ? LEGAL : SWAPPED_PAIR;
    }

    private static boolean isOdd(int[] permutation) {
        boolean odd = false;
        for (int high = 1; high < permutation.length; high++) {
            for (int low = 0; low < high; low++) {
                odd ^= permutation[low] > permutation[high];
            }
        }
        return odd;
    }
}
