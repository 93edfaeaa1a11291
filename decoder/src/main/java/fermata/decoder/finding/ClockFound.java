package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;

/**
 * A clock.
 *
 * @param field as far up as its bits were seen to move
 * @param tickMicros microseconds a tick
 * @param totals ticks at each frame, not wrapped, from the value of the first frame
 * @param spreadMicros how far the middle half of the arrivals lies apart about the clock's line
 */
record ClockFound(BitField field, double tickMicros, long[] totals, double spreadMicros) {
    /** The same clock without its lowest bits. */
    ClockFound coarser(int bits) {
        if (bits == 0) {
            return this;
        }
        BitField upper = BitPlace.above(
                field.order(),
                BitPlace.lsb(field) + (field.order() == BitField.Order.BIG ? -bits : bits),
                field.widthBits() - bits);
        long[] coarse = new long[totals.length];
        for (int i = 0; i < coarse.length; i++) {
            coarse[i] = totals[i] >> bits;
        }
        return new ClockFound(upper, tickMicros * (1 << bits), coarse, spreadMicros);
    }
}
