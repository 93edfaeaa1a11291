package fermata.analysis.record;

import java.util.Locale;

/** A stage, or a part of one. */
public enum StageName {
    /** CFOP, ZZ: the four edges of the first face. */
    CROSS,
    /** Part of a cross: from its edges being right among themselves to being right against the core. */
    ALIGN,
    /** The first corner-edge pair to be finished. */
    PAIR1,
    /** The second pair. */
    PAIR2,
    /** The third pair. */
    PAIR3,
    /** The fourth pair. */
    PAIR4,
    /** The last layer's stickers of its own colour up. */
    ORIENT,
    /** Part of orientation: the edges. */
    ORIENT_EDGES,
    /** Part of orientation: the corners. */
    ORIENT_CORNERS,
    /** The last layer's pieces in order, up to its turn. */
    PERMUTE,
    /** Part of permutation: the corners. */
    PERMUTE_CORNERS,
    /** Part of permutation: the edges. */
    PERMUTE_EDGES,
    /** The last turn of the last layer. */
    AUF,
    /** ZZ: all edges can be solved without quarter turns about one axis. */
    EO,
    /** ZZ: two opposite first-layer edges. */
    LINE,
    /** ZZ, Roux: the first 1x2x3 block. */
    BLOCK1,
    /** ZZ, Roux: the second 1x2x3 block. */
    BLOCK2,
    /** Roux: the four corners that the blocks leave. */
    CORNERS,
    /** Roux: the six edges that the blocks leave. */
    LAST_EDGES;

    /** The word in files and on screens: lower case. */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Pair 1 to 4. */
    public static StageName pair(int number) {
        return switch (number) {
            case 1 -> PAIR1;
            case 2 -> PAIR2;
            case 3 -> PAIR3;
            case 4 -> PAIR4;
            default -> throw new IllegalArgumentException("pair " + number + " is not in 1..4");
        };
    }
}
