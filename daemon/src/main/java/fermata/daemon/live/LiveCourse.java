package fermata.daemon.live;

import fermata.daemon.live.LiveSolve.Timed;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the evening is: a scramble is read, the cube rests scrambled, it is solved, and again.
 *
 * <p>Pure but for its own state; not thread-safe. Times are microseconds of one monotonic clock.
 */
final class LiveCourse {
    /** The cube counts as put down when it was still for so long after the scramble: then inspection begins. */
    static final long REST_MICROS = 1_000_000;

    /** What is being done. */
    enum Phase {
        /** There is no scramble yet. */
        IDLE,
        /** A scramble is announced, and perhaps begun. */
        SCRAMBLING,
        /** The scramble is done. */
        READY,
        /** The cube is being solved. */
        SOLVING
    }

    /** A scramble that was done; its first turn came after {@code announcedMicros}. */
    record Done(Scramble scramble, long announcedMicros) {}

    private Phase phase = Phase.IDLE;
    private Optional<ScrambleFollower> follower = Optional.empty();
    private Optional<LiveSolve> last = Optional.empty();
    private final List<Timed> turns = new ArrayList<>();
    private boolean whole = true;
    private long atStartMicros;
    private long beganMicros;
    private long doneMicros;
    private long firstMicros;

    Phase phase() {
        return phase;
    }

    Optional<ScrambleFollower> follower() {
        return follower;
    }

    /** The last solve that ended. */
    Optional<LiveSolve> last() {
        return last;
    }

    /** The solve that runs, or an empty one. */
    LiveSolve solve() {
        return new LiveSolve(turns, whole, Math.max(0, firstMicros - inspectionFromMicros()));
    }

    /** When inspection began, or will begin if the cube stays at rest. */
    long inspectionFromMicros() {
        return doneMicros + REST_MICROS;
    }

    /** A scramble to do next. */
    void offer(Scramble scramble, Optional<CubeState> relative, long nowMicros) {
        follower = Optional.of(new ScrambleFollower(scramble, relative));
        phase = Phase.SCRAMBLING;
        atStartMicros = nowMicros;
    }

    /** What was going on is given up: another scramble is wanted, or the capture is another. */
    void drop() {
        phase = Phase.IDLE;
        follower = Optional.empty();
        turns.clear();
    }

    /**
     * A turn; gives the scramble if this one was its last.
     *
     * @param atMicros by the cube's own pace: good for differences within a solve
     * @param arrivalMicros when it was heard: good against the board's clock, however the cube's clock runs
     */
    Optional<Done> turned(Turn turn, Optional<CubeState> relative, long atMicros, long arrivalMicros) {
        return switch (phase) {
            case IDLE -> Optional.empty();
            case SCRAMBLING -> scrambled(turn, relative, arrivalMicros);
            case READY, SOLVING -> {
                if (phase == Phase.READY) {
                    firstMicros = arrivalMicros;
                }
                solved(turn, relative, atMicros);
                yield Optional.empty();
            }
        };
    }

    private Optional<Done> scrambled(Turn turn, Optional<CubeState> relative, long atMicros) {
        ScrambleFollower reading = follower.orElseThrow();
        boolean wasAtStart = reading.isAtStart();
        reading.turned(turn, relative);
        if (reading.isAtStart()) {
            atStartMicros = atMicros;
        } else if (wasAtStart) {
            beganMicros = atMicros;
        }
        if (!reading.isDone()) {
            return Optional.empty();
        }
        ready(atMicros);
        // Between the two turns, since the analysis may date either a little earlier than they were heard.
        return Optional.of(new Done(reading.scramble(), atStartMicros + Math.max(0, beganMicros - atStartMicros) / 2));
    }

    private void ready(long atMicros) {
        phase = Phase.READY;
        doneMicros = atMicros;
        firstMicros = atMicros;
        turns.clear();
        whole = true;
    }

    private void solved(Turn turn, Optional<CubeState> relative, long atMicros) {
        phase = Phase.SOLVING;
        turns.add(new Timed(turn, atMicros));
        if (relative.isPresent() && relative.get().isSolved()) {
            end();
        }
    }

    /** Turns were lost. */
    void lost() {
        whole = false;
        if (phase == Phase.SCRAMBLING) {
            follower.orElseThrow().jumped(Optional.empty());
        }
    }

    /** The cube is known to be elsewhere than its turns led, since then. */
    void jumped(Optional<CubeState> relative, long atMicros) {
        if (phase == Phase.SCRAMBLING || phase == Phase.READY) {
            ScrambleFollower reading = follower.orElseThrow();
            reading.jumped(relative);
            if (!reading.isDone()) {
                phase = Phase.SCRAMBLING;
            } else if (phase == Phase.SCRAMBLING) {
                // What was lost of the scramble is not missing in the solve.
                ready(atMicros);
            }
        } else if (phase == Phase.SOLVING) {
            whole = false;
            if (relative.isPresent() && relative.get().isSolved()) {
                end();
            }
        }
    }

    private void end() {
        last = Optional.of(solve());
        drop();
    }
}
