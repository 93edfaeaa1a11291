package fermata.analysis.beat;

import fermata.analysis.record.StageName;

/** The parts of a solve that differ in how often and why a hand is held up there. */
public enum Stretch {
    /** Planned before the first turn: cross, edge orientation, line. */
    OPENING,
    /** The first pair. */
    PAIR1,
    /** The second pair. */
    PAIR2,
    /** The third pair. */
    PAIR3,
    /** The fourth pair. */
    PAIR4,
    /** The first block. */
    BLOCK1,
    /** The second block. */
    BLOCK2,
    /** Orienting the last layer, in one look or two. */
    ORIENT,
    /** Permuting it, in one look or two. */
    PERMUTE,
    /** Its last turn. */
    AUF,
    /** What other methods end with. */
    OTHER_END,
    /** No method could be told. */
    UNTOLD;

    /** The stretch that a stage, or a part of one, belongs to. */
    public static Stretch of(StageName stage) {
        return switch (stage) {
            case CROSS, ALIGN, EO, LINE -> OPENING;
            case PAIR1 -> PAIR1;
            case PAIR2 -> PAIR2;
            case PAIR3 -> PAIR3;
            case PAIR4 -> PAIR4;
            case BLOCK1 -> BLOCK1;
            case BLOCK2 -> BLOCK2;
            case ORIENT, ORIENT_EDGES, ORIENT_CORNERS -> ORIENT;
            case PERMUTE, PERMUTE_EDGES, PERMUTE_CORNERS -> PERMUTE;
            case AUF -> AUF;
            case CORNERS, LAST_EDGES -> OTHER_END;
        };
    }

    /** Whether it is a pair or a block, to be looked for among the other pieces. */
    public boolean isSought() {
        return ordinal() >= PAIR1.ordinal() && ordinal() <= BLOCK2.ordinal();
    }

    /** Whether it begins with recognising a case. */
    public boolean isRecognised() {
        return this == ORIENT || this == PERMUTE || this == OTHER_END;
    }

    /** Whether its turns are known before it begins, by plan or by heart. */
    public boolean isKnown() {
        return this == OPENING || this == ORIENT || this == PERMUTE;
    }
}
