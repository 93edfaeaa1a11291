package fermata.daemon.live;

import fermata.decoder.cube.Turn;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A solve as far as it was heard.
 *
 * @param turns its turns in order
 * @param whole whether none of its turns was lost; else its time would be a guess
 * @param inspectionMicros from the moment the scrambled cube was known to rest to the first turn; 0 if it did not rest
 */
public record LiveSolve(List<Timed> turns, boolean whole, long inspectionMicros) {
    /** The longest rest is told from three times the usual step on: less is the rhythm. */
    private static final int STEPS_OF_A_REST = 3;

    /** A turn of it, and when by the board's monotonic clock. */
    public record Timed(Turn turn, long atMicros) {
        public Timed {
            Objects.requireNonNull(turn, "turn");
        }
    }

    /**
     * The longest interval between two turns.
     *
     * @param afterTurn the number of the turn before it, from 1
     */
    public record Rest(int afterTurn, long lengthMicros) {}

    public LiveSolve {
        turns = List.copyOf(turns);
    }

    /** First turn to last turn; 0 before the second. */
    public long turnMicros() {
        return turns.isEmpty()
                ? 0
                : turns.get(turns.size() - 1).atMicros() - turns.get(0).atMicros();
    }

    /** The longest interval, if it stands out; no more than observed, so not yet a rest of the analysis. */
    public Optional<Rest> longestRest() {
        long[] steps = new long[Math.max(0, turns.size() - 1)];
        int longest = 0;
        for (int step = 0; step < steps.length; step++) {
            steps[step] = turns.get(step + 1).atMicros() - turns.get(step).atMicros();
            longest = steps[step] > steps[longest] ? step : longest;
        }
        if (!whole || steps.length == 0) {
            return Optional.empty();
        }
        long length = steps[longest];
        Arrays.sort(steps);
        return length >= STEPS_OF_A_REST * steps[steps.length / 2]
                ? Optional.of(new Rest(longest + 1, length))
                : Optional.empty();
    }
}
