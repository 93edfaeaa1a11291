package fermata.decoder.search;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import java.util.Arrays;
import java.util.List;

/**
 * How many face turns bring four given pieces home, for every place and orientation of the four: by breadth-first
 * search from home, 324 KB each. Combinations that cannot exist keep the depth -1.
 */
public final class FourPieces {
    private static final int SIZE = PieceTurns.CODES * PieceTurns.CODES * PieceTurns.CODES * PieceTurns.CODES;

    private final byte[] depth;

    private FourPieces(byte[] depth) {
        this.depth = depth;
    }

    /** Together exactly four pieces; codes are asked for in this order, corners first. */
    public static FourPieces build(List<Corner> corners, List<Edge> edges) {
        byte[] depth = new byte[SIZE];
        Arrays.fill(depth, (byte) -1);
        int[] homes = new int[4];
        for (int piece = 0; piece < 4; piece++) {
            homes[piece] = piece < corners.size()
                    ? PieceTurns.home(corners.get(piece))
                    : PieceTurns.home(edges.get(piece - corners.size()));
        }
        int start = index(homes[0], homes[1], homes[2], homes[3]);
        int[] ring = new int[SIZE];
        int written = 0;
        ring[written++] = start;
        depth[start] = 0;
        for (int read = 0; read < written; read++) {
            for (int turn = 0; turn < 18; turn++) {
                int to = turned(ring[read], turn, corners.size());
                if (depth[to] < 0) {
                    depth[to] = (byte) (depth[ring[read]] + 1);
                    ring[written++] = to;
                }
            }
        }
        return new FourPieces(depth);
    }

    static int index(int first, int second, int third, int fourth) {
        return ((first * PieceTurns.CODES + second) * PieceTurns.CODES + third) * PieceTurns.CODES + fourth;
    }

    public int depth(int first, int second, int third, int fourth) {
        return depth[index(first, second, third, fourth)];
    }

    /** How many combinations stand at each depth, from 0. */
    public long[] counts() {
        long[] counts = new long[32];
        int deepest = 0;
        for (byte value : depth) {
            if (value >= 0) {
                counts[value]++;
                deepest = Math.max(deepest, value);
            }
        }
        return Arrays.copyOf(counts, deepest + 1);
    }

    private static int turned(int index, int turn, int corners) {
        int result = 0;
        int unit = 1;
        int rest = index;
        for (int piece = 3; piece >= 0; piece--) {
            int code = rest % PieceTurns.CODES;
            rest /= PieceTurns.CODES;
            result += unit * (piece < corners ? PieceTurns.corner(turn, code) : PieceTurns.edge(turn, code));
            unit *= PieceTurns.CODES;
        }
        return result;
    }
}
