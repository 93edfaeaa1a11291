package fermata.decoder.solver;

import java.util.Arrays;

/**
 * For every pair of values of two coordinates, how many turns bring both to zero: a lower bound for the whole state.
 */
final class PruningTable {
    private final byte[] depth;
    private final int inner;

    private PruningTable(byte[] depth, int inner) {
        this.depth = depth;
        this.inner = inner;
    }

    /** Both move tables must speak of the same turns. Cost: one table step for each pair and turn. */
    static PruningTable build(MoveTable outer, MoveTable inner) {
        byte[] depth = new byte[outer.size() * inner.size()];
        Arrays.fill(depth, (byte) -1);
        int[] ring = new int[depth.length];
        int read = 0;
        int written = 0;
        depth[0] = 0;
        ring[written++] = 0;
        while (read < written) {
            int from = ring[read++];
            for (int turn = 0; turn < outer.turns(); turn++) {
                int to = outer.next(from / inner.size(), turn) * inner.size() + inner.next(from % inner.size(), turn);
                if (depth[to] < 0) {
                    depth[to] = (byte) (depth[from] + 1);
                    ring[written++] = to;
                }
            }
        }
        return new PruningTable(depth, inner.size());
    }

    int depth(int outerValue, int innerValue) {
        return depth[outerValue * inner + innerValue];
    }

    /** How many pairs stand at each depth, from 0. */
    long[] counts() {
        long[] counts = new long[32];
        int deepest = 0;
        for (byte value : depth) {
            counts[value]++;
            deepest = Math.max(deepest, value);
        }
        return Arrays.copyOf(counts, deepest + 1);
    }
}
