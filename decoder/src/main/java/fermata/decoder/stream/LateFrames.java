package fermata.decoder.stream;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.ToLongFunction;

/**
 * Frames that came before turns which they do not hold: those turns may be in a frame that was overtaken on the way, so
 * they wait for it. The wait is bounded in time and number, because what is missing may as well be lost. O(1) a frame,
 * for there are few. Not thread-safe.
 */
final class LateFrames {
    /**
     * BlueZ 5.66 let a frame be overtaken by up to three later ones at 5.6 turns a second, which is half a second;
     * twice that, so that no gap is said where a frame was only late.
     */
    static final long WAIT_MICROS = 1_000_000;

    private static final int MOST_WAITING = 16;

    /** A frame of turns as it came. */
    record Entry(UUID characteristic, long arrivalMicros, FrameReading.TurnsFrame turns) {
        long sequence() {
            return turns.sequence().orElseThrow();
        }
    }

    private final List<Entry> waiting = new ArrayList<>();

    void add(Entry entry) {
        waiting.add(entry);
    }

    boolean isEmpty() {
        return waiting.isEmpty();
    }

    /** Whether there is no room for another, or one has waited its time. */
    boolean isDue(long nowMicros) {
        return waiting.size() > MOST_WAITING
                || waiting.stream().anyMatch(entry -> entry.arrivalMicros() <= nowMicros - WAIT_MICROS);
    }

    /** The one with the lowest number, by how far ahead numbers are. */
    Optional<Entry> next(ToLongFunction<Entry> ahead) {
        return waiting.stream().min(Comparator.comparingLong(ahead));
    }

    void remove(Entry entry) {
        waiting.remove(entry);
    }
}
