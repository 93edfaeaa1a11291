package fermata.daemon.pairing;

import fermata.daemon.live.TurnHearer;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * Pairs a browser by the cube: it shows six turns, and whoever turns exactly these on the board's cube within a minute
 * has the cube in the hand.
 *
 * <p>One attempt at a time. The very next turn counts, so that practice going on pairs no stranger's browser: there
 * are {@value #WAYS} ways, and one try each. After a failed attempt the next must wait, twice as long each time up
 * to five minutes. Safe for use by many threads; hearing a turn never waits for a disk.
 */
public final class PairingDesk implements TurnHearer {
    /** How many turns are shown. */
    public static final int TURNS = 6;

    /** Quarter turns of six faces, then of the four on another axis. */
    static final int WAYS = 12 * 8 * 8 * 8 * 8 * 8;

    static final Duration LIMIT = Duration.ofSeconds(60);

    private static final Duration FIRST_PAUSE = Duration.ofSeconds(5);
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(5);
    private static final long NANOS_PER_MICRO = 1_000;

    private final PairedBrowsers browsers;
    private final BoardCode board;
    private final MonotonicClock monotonic;
    private final Clock civil;
    private final RandomGenerator random;
    private Optional<Attempt> running = Optional.empty();
    private Duration pause = Duration.ZERO;
    private long endedNanos;

    /** What one browser tries. */
    private static final class Attempt {
        private final PairingStep.Begun shown;
        private final String browser;
        private final long beganNanos;
        private int done;

        Attempt(PairingStep.Begun shown, String browser, long beganNanos) {
            this.shown = shown;
            this.browser = browser;
            this.beganNanos = beganNanos;
        }
    }

    /**
     * A desk for a home.
     *
     * @param monotonic the clock that captures are stamped with
     * @param civil dates the pairings
     */
    public PairingDesk(Path home, MonotonicClock monotonic, Clock civil) {
        this(home, monotonic, civil, new SecureRandom());
    }

    PairingDesk(Path home, MonotonicClock monotonic, Clock civil, RandomGenerator random) {
        this.browsers = new PairedBrowsers(home);
        this.board = new BoardCode(home);
        this.monotonic = monotonic;
        this.civil = civil;
        this.random = random;
    }

    /** The browsers that were paired. */
    public PairedBrowsers browsers() {
        return browsers;
    }

    /**
     * A browser wishes to be paired: {@link PairingStep.Begun} or {@link PairingStep.Wait}.
     *
     * @param browser what it calls itself
     */
    public PairingStep begin(String browser) {
        PairingStep step = reserve(browser);
        if (step instanceof PairingStep.Begun begun) {
            board.ask(begun.code());
        }
        return step;
    }

    private synchronized PairingStep reserve(String browser) {
        failIfLate();
        long waitNanos = running.isPresent() ? leftNanos(running.get()) : pause.toNanos() - sinceNanos(endedNanos);
        if (running.isPresent() || waitNanos > 0) {
            return new PairingStep.Wait(seconds(waitNanos));
        }
        PairingStep.Begun shown = new PairingStep.Begun(Secrets.token(), turns(), BoardCode.draw(), LIMIT.toSeconds());
        running = Optional.of(new Attempt(shown, browser, monotonic.nanos()));
        return shown;
    }

    /** How the attempt stands: waiting, paired (told once) or failed. */
    public PairingStep claim(String secret) {
        Optional<Attempt> attempt = attempt(secret);
        if (attempt.isEmpty()) {
            return new PairingStep.Failed();
        }
        boolean approved = board.isApproved(attempt.get().shown.code());
        PairingStep step = settle(attempt.get(), approved);
        if (step instanceof PairingStep.Paired) {
            board.withdraw();
            return new PairingStep.Paired(browsers.pair(attempt.get().browser, civil));
        }
        return step;
    }

    private synchronized Optional<Attempt> attempt(String secret) {
        failIfLate();
        return running.filter(one -> Secrets.same(one.shown.secret(), secret));
    }

    /** Ends the attempt if it has come to its end; the token is not made yet. */
    private synchronized PairingStep settle(Attempt attempt, boolean approved) {
        if (running.isEmpty() || running.get() != attempt) {
            return new PairingStep.Failed();
        }
        if (attempt.done < TURNS && !approved) {
            return new PairingStep.Waiting(attempt.done, seconds(leftNanos(attempt)));
        }
        running = Optional.empty();
        pause = Duration.ZERO;
        return new PairingStep.Paired("");
    }

    @Override
    public synchronized void turned(Turn turn, long arrivalMicros) {
        running.filter(attempt -> attempt.done < TURNS && arrivalMicros >= attempt.beganNanos / NANOS_PER_MICRO)
                .ifPresent(attempt -> {
                    if (turn.equals(attempt.shown.turns().get(attempt.done))) {
                        attempt.done++;
                    } else {
                        fail();
                    }
                });
    }

    @Override
    public synchronized void lost() {
        running.filter(attempt -> attempt.done < TURNS).ifPresent(attempt -> fail());
    }

    private void failIfLate() {
        running.filter(attempt -> leftNanos(attempt) <= 0).ifPresent(attempt -> fail());
    }

    /** The code in the home stays until the next attempt; without this attempt it opens nothing. */
    private void fail() {
        running = Optional.empty();
        endedNanos = monotonic.nanos();
        Duration twice = pause.multipliedBy(2);
        pause = pause.isZero() ? FIRST_PAUSE : twice.compareTo(LONGEST_PAUSE) < 0 ? twice : LONGEST_PAUSE;
    }

    private List<Turn> turns() {
        List<Turn> turns = new ArrayList<>();
        Optional<Face> last = Optional.empty();
        while (turns.size() < TURNS) {
            Face face = Face.values()[random.nextInt(6)];
            if (last.isEmpty() || !face.sharesAxisWith(last.get())) {
                turns.add(Turn.of(face, random.nextBoolean() ? 1 : 3));
                last = Optional.of(face);
            }
        }
        return turns;
    }

    private long leftNanos(Attempt attempt) {
        return LIMIT.toNanos() - sinceNanos(attempt.beganNanos);
    }

    private long sinceNanos(long thenNanos) {
        return monotonic.nanos() - thenNanos;
    }

    private static long seconds(long nanos) {
        return Math.max(1, Duration.ofNanos(nanos).plusMillis(999).toSeconds());
    }
}
