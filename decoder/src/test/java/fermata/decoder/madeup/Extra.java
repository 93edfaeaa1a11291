package fermata.decoder.madeup;

import fermata.decoder.stream.profile.BitField;

/** Bytes of a frame that say nothing about turns. */
record Extra(BitField field, Kind kind) {
    enum Kind {
        BATTERY,
        RANDOM,
        SLOW,
        SATURATING,
        REPEATED
    }
}
