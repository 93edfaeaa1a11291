package fermata.decoder.stream;

import fermata.decoder.stream.StreamEvent.TurnSensed;

/**
 * Times of turns in the order of the stream, never falling: lines of two epochs differ by a few milliseconds, and a
 * turn does not come before the one before it. O(1) a turn. Not thread-safe.
 */
public final class TurnTimeline {
    private final StreamDecoder decoder;
    private long lastMicros = Long.MIN_VALUE;

    /**
     * Over one capture.
     *
     * @param decoder after all frames
     */
    public TurnTimeline(StreamDecoder decoder) {
        this.decoder = decoder;
    }

    /** The time of the next turn; turns must come in the order in which the decoder gave them. */
    public TurnTime next(TurnSensed turn) {
        TurnTime time = decoder.timeOf(turn);
        lastMicros = Math.max(lastMicros, time.boardMicros());
        return new TurnTime(lastMicros, time.earlierMicros(), time.basis());
    }
}
