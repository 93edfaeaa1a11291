package fermata.decoder.stream;

import fermata.decoder.clock.TurnClock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The clock epochs of a capture: for each its clock and when its turns arrived. Not thread-safe. */
final class Epochs {
    /** One epoch. */
    static final class Epoch {
        private final TurnClock clock;
        private long[] arrivals = new long[16];
        private int size;

        private Epoch(long startMicros) {
            this.clock = new TurnClock(startMicros);
        }

        TurnClock clock() {
            return clock;
        }

        boolean hasTurns() {
            return size > 0;
        }

        void arrived(long arrivalMicros) {
            if (size == arrivals.length) {
                arrivals = Arrays.copyOf(arrivals, 2 * size);
            }
            arrivals[size++] = arrivalMicros;
        }

        long[] arrivals() {
            return Arrays.copyOf(arrivals, size);
        }
    }

    private final List<Epoch> epochs = new ArrayList<>();

    /** Number of the current one, from 0; -1 before the first. */
    int current() {
        return epochs.size() - 1;
    }

    Epoch get(int number) {
        if (number < 0 || number >= epochs.size()) {
            throw new IllegalArgumentException("epoch " + number + " is not in 0.." + (epochs.size() - 1));
        }
        return epochs.get(number);
    }

    Epoch last() {
        return get(current());
    }

    StreamEvent start(EpochReason reason, long arrivalMicros) {
        epochs.add(new Epoch(arrivalMicros));
        return new StreamEvent.EpochStarted(reason, arrivalMicros, current());
    }
}
