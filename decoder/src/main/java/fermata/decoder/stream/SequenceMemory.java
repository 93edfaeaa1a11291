package fermata.decoder.stream;

import java.util.Arrays;
import java.util.Objects;
import java.util.OptionalLong;

/** The numbers of the last turns and which turns they were, as far as they are known. O(1). Not thread-safe. */
final class SequenceMemory {
    /** How the turns of a frame agree with those remembered under the same numbers. */
    enum Overlap {
        NONE,
        SAME,
        OTHER
    }

    /** Reordering beyond this many turns has no cause that a restart would not explain better. */
    private static final int MAX_DEPTH = 64;

    /** A device may round each difference in a history by itself, and they add up. */
    private static final long MAX_ROUNDING_TICKS = 16;

    private final long numbers;
    private final FrameTurn[] recent;
    private boolean anchored;
    private long last;
    private int depth;

    /**
     * For one device.
     *
     * @param numbers how many sequence numbers there are before they wrap
     */
    SequenceMemory(long numbers) {
        this.numbers = numbers;
        this.recent = new FrameTurn[(int) Math.min(MAX_DEPTH, Math.max(1, numbers / 2))];
    }

    boolean isEmpty() {
        return !anchored;
    }

    /** Whether it remembers any turn, not just a number. */
    boolean hasTurns() {
        return Arrays.stream(recent).anyMatch(Objects::nonNull);
    }

    /** Forgets everything and takes {@code sequence} as the last number; its turn is not known. */
    void anchor(long sequence) {
        anchored = true;
        last = sequence;
        depth = 1;
        Arrays.fill(recent, null);
    }

    void clear() {
        anchored = false;
        depth = 0;
    }

    /** How far a number is after the last one, 0 up to the wrap. */
    long ahead(long sequence) {
        return Math.floorMod(sequence - last, numbers);
    }

    /** Whether a number is the last or one of those shortly before it. */
    boolean isPast(long sequence) {
        return anchored && Math.floorMod(last - sequence, numbers) < depth;
    }

    /** Takes the next number: its turn. */
    void append(FrameTurn turn) {
        last = Math.floorMod(last + 1, numbers);
        recent[slot(last)] = turn;
        depth = Math.min(depth + 1, recent.length);
    }

    /** Takes the next {@code count} numbers: turns that are not known. */
    void appendLost(long count) {
        for (long i = 0; i < Math.min(count, recent.length); i++) {
            recent[slot(last + count - i)] = null;
        }
        last = Math.floorMod(last + count, numbers);
        depth = (int) Math.min(depth + count, recent.length);
    }

    Overlap overlap(FrameReading.TurnsFrame frame) {
        Overlap overlap = Overlap.NONE;
        for (FrameTurn turn : frame.turns()) {
            OptionalLong sequence = turn.sequence();
            if (sequence.isEmpty() || !isPast(sequence.getAsLong())) {
                continue;
            }
            FrameTurn known = recent[slot(sequence.getAsLong())];
            if (known != null && !isSame(known, turn)) {
                return Overlap.OTHER;
            }
            overlap = known == null ? overlap : Overlap.SAME;
        }
        return overlap;
    }

    private static boolean isSame(FrameTurn known, FrameTurn turn) {
        boolean timed = known.ticks().isPresent() && turn.ticks().isPresent();
        boolean exact = timed && !known.ticksAreBound() && !turn.ticksAreBound();
        return known.turn().equals(turn.turn())
                && (!exact || Math.abs(known.ticks().getAsLong() - turn.ticks().getAsLong()) <= MAX_ROUNDING_TICKS);
    }

    private int slot(long sequence) {
        // Both are powers of two, so that slots stay apart across a wrap.
        return (int) (Math.floorMod(sequence, numbers) % recent.length);
    }
}
