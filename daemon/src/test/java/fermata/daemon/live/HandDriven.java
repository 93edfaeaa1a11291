package fermata.daemon.live;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;

/** A board whose cube a test turns by hand, one frame a turn, in the open layout. */
public final class HandDriven implements AutoCloseable {
    public static final Origin COOK = new Origin("galley cube", "cook", Hand.LEFT);

    public final LiveBoard board;
    public final LiveCapture capture;
    private final Queue<Scramble> scrambles;
    private final SteppedClock clock;
    private final List<MadeTurn> made = new ArrayList<>();
    private volatile LinkStatus status = new LinkStatus(LinkStatus.State.LISTENING, "");
    private CubeState state = CubeState.SOLVED;
    private long ordinal;
    private long deviceMillis = 5_000;

    /** A board by the machine's clock, as a page needs it that counts on by itself. */
    public HandDriven(TellingJournal journal, String... words) {
        this(MonotonicClock.system(), journal, words);
    }

    /** A board by a clock of the test's own. */
    HandDriven(MonotonicClock from, TellingJournal journal, String... words) {
        clock = new SteppedClock(from);
        scrambles = new ConcurrentLinkedQueue<>(
                Stream.of(words).map(HandDriven::scramble).toList());
        board = LiveBoard.start(() -> Optional.ofNullable(scrambles.poll()), clock);
        capture = board.begin(OpenLayout.profile(), COOK);
        capture.attach(() -> status, journal);
    }

    public static Scramble scramble(String words) {
        return new Scramble(turns(words));
    }

    public static List<Turn> turns(String words) {
        return Stream.of(words.split(" ")).map(Turn::parse).toList();
    }

    /** Turns, each so many milliseconds of the cube's clock after the one before. */
    public void turn(String words, long everyMillis) {
        for (Turn turn : turns(words)) {
            make(turn, everyMillis);
            say(OpenLayout.TURNS.toString(), OpenLayout.encodeTurns(made.size(), 1, latest()));
        }
    }

    /** Turns that no frame tells of, and no later frame can repair. */
    public void turnUnheard(String words) {
        turns(words).forEach(turn -> make(turn, 200));
    }

    /** So long that no frame can be on its way any more that would tell of turns unheard. */
    public void waitForLateFrames() {
        clock.stepNanos.addAndGet(1_000_000_000);
        synchronized (board) {
            capture.settle(clock.nanos() / 1_000);
            capture.restedBy(clock.nanos() / 1_000);
        }
    }

    private void make(Turn turn, long afterMillis) {
        deviceMillis += afterMillis;
        clock.stepNanos.addAndGet(afterMillis * 1_000_000);
        made.add(new MadeTurn(turn, deviceMillis));
        state = state.apply(turn);
    }

    private List<MadeTurn> latest() {
        return made.subList(Math.max(0, made.size() - OpenLayout.TURNS_A_FRAME), made.size());
    }

    /** The cube's state is read, as it is on every connection. */
    public void reportState() {
        say(OpenLayout.STATE.toString(), OpenLayout.encodeState(made.size(), deviceMillis, state));
    }

    public void reportBattery(int percent) {
        say(OpenLayout.BATTERY_LEVEL.toString(), OpenLayout.encodeBattery(percent));
    }

    private void say(String characteristic, byte[] bytes) {
        capture.committed(List.of(new HeardFrame(1, ordinal++, characteristic, clock.nanos(), bytes)));
    }

    public void link(LinkStatus.State to, String detail) {
        status = new LinkStatus(to, detail);
    }

    /** What a page that joins now would be told. */
    public String told() {
        Queue<LiveMessage> heard = new ArrayDeque<>();
        board.join(heard::add).run();
        return heard.remove().json();
    }

    /** A clock moved on by what the test says has passed. */
    private static final class SteppedClock implements MonotonicClock {
        private final MonotonicClock from;
        private final AtomicLong stepNanos = new AtomicLong();

        private SteppedClock(MonotonicClock from) {
            this.from = from;
        }

        @Override
        public long nanos() {
            return from.nanos() + stepNanos.get();
        }

        @Override
        public long machineNanos(Duration duration) {
            return from.machineNanos(duration);
        }
    }

    /** The clock that its frames are stamped with. */
    public MonotonicClock clock() {
        return clock;
    }

    @Override
    public void close() {
        board.close();
    }
}
