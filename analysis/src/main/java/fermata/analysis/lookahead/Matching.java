package fermata.analysis.lookahead;

import java.util.Arrays;

/**
 * Which pairs of piece and place stand in some perfect matching: those a piece can have while all others find one
 * too.
 *
 * <p>Source: Regin 1994, A filtering algorithm for constraints of difference: given one perfect matching (found by
 * augmenting paths, Kuhn 1955), another one holds the pair (p, place of q) if and only if q reaches p along 'may take
 * the place of'. Sets are bit masks; cost about n^3 bit operations for n pieces, n at most 31.
 */
final class Matching {
    private static final int NOBODY = -1;

    private final int[] placesOf;
    private final int[] pieceAt;

    private Matching(int[] placesOf) {
        this.placesOf = placesOf;
        this.pieceAt = new int[placesOf.length];
        Arrays.fill(pieceAt, NOBODY);
    }

    /**
     * Narrows the places of each piece.
     *
     * @param placesOf for each piece a bit mask of places; at least one perfect matching must exist
     * @return for each piece the places it has in some perfect matching
     */
    static int[] narrowed(int[] placesOf) {
        Matching matching = new Matching(placesOf);
        for (int piece = 0; piece < placesOf.length; piece++) {
            if (!matching.isPlaced(piece, new int[1])) {
                throw new IllegalArgumentException("no placement of all pieces shows what was seen");
            }
        }
        return matching.exchangeable();
    }

    private boolean isPlaced(int piece, int[] tried) {
        for (int open = placesOf[piece] & ~tried[0]; open != 0; open = placesOf[piece] & ~tried[0]) {
            int place = Integer.numberOfTrailingZeros(open);
            tried[0] |= 1 << place;
            if (pieceAt[place] == NOBODY || isPlaced(pieceAt[place], tried)) {
                pieceAt[place] = piece;
                return true;
            }
        }
        return false;
    }

    private int[] exchangeable() {
        int size = placesOf.length;
        int[] reached = new int[size];
        for (int piece = 0; piece < size; piece++) {
            reached[piece] = 1 << piece;
            for (int place = 0; place < size; place++) {
                reached[piece] |= (placesOf[piece] >> place & 1) << pieceAt[place];
            }
        }
        for (int via = 0; via < size; via++) {
            for (int piece = 0; piece < size; piece++) {
                reached[piece] |= (reached[piece] >> via & 1) == 1 ? reached[via] : 0;
            }
        }
        int[] narrowed = new int[size];
        for (int place = 0; place < size; place++) {
            for (int piece = 0; piece < size; piece++) {
                narrowed[piece] |= placesOf[piece] & (reached[pieceAt[place]] >> piece & 1) << place;
            }
        }
        return narrowed;
    }
}
