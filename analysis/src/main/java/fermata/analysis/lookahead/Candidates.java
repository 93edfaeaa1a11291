package fermata.analysis.lookahead;

import java.util.Arrays;

/**
 * For each piece of one kind the places and ways (twist or flip) it may be in, and whether its own stickers told.
 *
 * <p>Immutable. Sizes: 8 pieces in 3 ways, or 12 in 2.
 */
final class Candidates {
    /** A question about one piece in one place and way. */
    interface Test {
        boolean holds(int piece, int place, int way);
    }

    private final int ways;
    /** {@code open[piece][place * ways + way]}. */
    private final boolean[][] open;
    /** Whether the stickers of the place it is in have told; meaningful once one candidate is left. */
    private final boolean[] told;

    private Candidates(int ways, boolean[][] open, boolean[] told) {
        this.ways = ways;
        this.open = open;
        this.told = told;
    }

    static Candidates all(int pieces, int ways) {
        boolean[][] open = new boolean[pieces][pieces * ways];
        for (boolean[] row : open) {
            Arrays.fill(row, true);
        }
        return new Candidates(ways, open, new boolean[pieces]);
    }

    Candidates keeping(Test test) {
        boolean[][] kept = new boolean[open.length][];
        for (int piece = 0; piece < open.length; piece++) {
            kept[piece] = open[piece].clone();
            for (int slot = 0; slot < kept[piece].length; slot++) {
                kept[piece][slot] = kept[piece][slot] && test.holds(piece, slot / ways, slot % ways);
            }
        }
        return new Candidates(ways, kept, told);
    }

    /** Marks the pieces whose one candidate that fits is in a place whose stickers tell all. */
    Candidates markingSeen(Test stickersTell) {
        boolean[] marked = told.clone();
        for (int piece = 0; piece < open.length; piece++) {
            int only = onlySlot(piece);
            marked[piece] |= only >= 0 && stickersTell.holds(piece, only / ways, only % ways);
        }
        return new Candidates(ways, open, marked);
    }

    Candidates moved(int[] targetOfPlace, int[] turnOfPlace) {
        boolean[][] moved = new boolean[open.length][open[0].length];
        for (int piece = 0; piece < open.length; piece++) {
            for (int slot = 0; slot < open[piece].length; slot++) {
                if (open[piece][slot]) {
                    int place = slot / ways;
                    int way = (slot % ways + turnOfPlace[place]) % ways;
                    moved[piece][targetOfPlace[place] * ways + way] = true;
                }
            }
        }
        return new Candidates(ways, moved, told);
    }

    /** Drops every place that a piece cannot have while all others also find one. */
    Candidates matched() {
        int[] placesOf = new int[open.length];
        for (int piece = 0; piece < open.length; piece++) {
            for (int place = 0; place < open.length; place++) {
                placesOf[piece] |= mayBeAt(piece, place) ? 1 << place : 0;
            }
        }
        int[] narrowed = Matching.narrowed(placesOf);
        return keeping((piece, place, way) -> (narrowed[piece] >> place & 1) == 1);
    }

    Knowing of(int piece) {
        int places = 0;
        for (int place = 0; place < open.length; place++) {
            places += mayBeAt(piece, place) ? 1 : 0;
        }
        Knowing.Kind kind =
                onlySlot(piece) < 0 ? Knowing.Kind.OPEN : told[piece] ? Knowing.Kind.SEEN : Knowing.Kind.ELIMINATED;
        return new Knowing(kind, places);
    }

    private boolean mayBeAt(int piece, int place) {
        for (int way = 0; way < ways; way++) {
            if (open[piece][place * ways + way]) {
                return true;
            }
        }
        return false;
    }

    private int onlySlot(int piece) {
        int only = -1;
        for (int slot = 0; slot < open[piece].length; slot++) {
            if (open[piece][slot]) {
                if (only >= 0) {
                    return -1;
                }
                only = slot;
            }
        }
        return only;
    }
}
