package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;

/**
 * A number that rises with the turns.
 *
 * @param field as far up as its bits were seen to move
 * @param totals its value at each frame, not wrapped, from that of the first frame
 */
record CounterFound(BitField field, long[] totals) {
    /** By how much frame {@code index} is ahead of the one before it. */
    long step(int index) {
        return totals[index] - totals[index - 1];
    }
}
