package fermata.daemon.live;

import fermata.analysis.event.Origin;
import fermata.daemon.json.Json;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.CubeState;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What the board knows of the evening that is going on, told to whoever listens.
 *
 * <p>Safe for use by many threads. Hearers are called under one lock, so that each hears every change once and in
 * order; they must not wait. A thread of its own asks for the link's status four times a second and keeps announced
 * scrambles, so that the capture's writer never waits for the disk on their account.
 */
public final class LiveBoard implements LiveFeed, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveBoard.class);
    private static final long LOOK_EVERY_MILLIS = 250;
    private static final long NANOS_PER_MICRO = 1_000;

    private final ScrambleSource scrambles;
    private final MonotonicClock clock;
    private final List<Consumer<LiveMessage>> hearers = new ArrayList<>();
    private final ScheduledExecutorService desk;
    private final List<TurnHearer> turnHearers = new ArrayList<>();
    private Optional<LiveCapture> running = Optional.empty();
    private Supplier<List<String>> warnings = List::of;
    private ObjectNode toldLink = link();

    private LiveBoard(ScrambleSource scrambles, MonotonicClock clock) {
        this.scrambles = scrambles;
        this.clock = clock;
        desk = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "fermata-live");
            thread.setDaemon(true);
            return thread;
        });
        desk.scheduleWithFixedDelay(this::look, LOOK_EVERY_MILLIS, LOOK_EVERY_MILLIS, TimeUnit.MILLISECONDS);
    }

    /**
     * A board that listens to nothing yet.
     *
     * @param scrambles where scrambles come from; asked under a lock
     * @param clock the one that captures are stamped with
     */
    public static LiveBoard start(ScrambleSource scrambles, MonotonicClock clock) {
        return new LiveBoard(scrambles, clock);
    }

    /**
     * A capture begins; it replaces the one before it.
     *
     * @param profile how the cube talks
     * @param origin cube, solver and hand
     */
    public synchronized LiveCapture begin(StreamProfile profile, Origin origin) {
        LiveCapture capture = new LiveCapture(this, profile, origin);
        running = Optional.of(capture);
        offerIfIdle(capture);
        tell("state", state());
        return capture;
    }

    /** Tells {@code hearer} every turn from now on. */
    public synchronized void hearTurns(TurnHearer hearer) {
        turnHearers.add(hearer);
    }

    /**
     * Tells pages what is not well with the practice or its disk.
     *
     * @param sentences asked several times a second; must not wait
     */
    public synchronized void warn(Supplier<List<String>> sentences) {
        warnings = sentences;
    }

    void heard(TurnSensed sensed) {
        turnHearers.forEach(hearer -> hearer.turned(sensed.turn(), sensed.arrivalMicros()));
    }

    void heardLoss() {
        turnHearers.forEach(TurnHearer::lost);
    }

    synchronized void ended(LiveCapture capture) {
        if (isRunning(capture)) {
            running = Optional.empty();
            tell("state", state());
        }
    }

    private boolean isRunning(LiveCapture capture) {
        return running.isPresent() && running.get() == capture;
    }

    @Override
    public synchronized Runnable join(Consumer<LiveMessage> hearer) {
        hearer.accept(new LiveMessage("state", Json.write(state())));
        hearers.add(hearer);
        return () -> leave(hearer);
    }

    private synchronized void leave(Consumer<LiveMessage> hearer) {
        hearers.remove(hearer);
    }

    @Override
    public boolean isListening() {
        return true;
    }

    @Override
    public synchronized void nextScramble() {
        running.ifPresent(capture -> {
            capture.evening.drop();
            offerIfIdle(capture);
            tellEvening(capture);
        });
    }

    @Override
    public synchronized void cubeIsSolved() {
        running.ifPresent(capture -> {
            long nowMicros = nowMicros();
            capture.solvedHere(nowMicros);
            keepReference(capture, nowMicros);
            capture.evening.jumped(capture.cube.relative(), nowMicros);
            offerIfIdle(capture);
            tellEvening(capture);
        });
    }

    private synchronized void look() {
        try {
            ObjectNode link = link();
            if (!link.equals(toldLink)) {
                toldLink = link;
                tell("link", link);
            }
            running.ifPresent(capture -> {
                capture.settle(nowMicros());
                capture.restedBy(nowMicros());
                if (offerIfIdle(capture)) {
                    tellEvening(capture);
                }
            });
        } catch (RuntimeException e) {
            LOG.warn("the live page could not be brought up to date; trying again", e);
        }
    }

    /** Asks for a scramble where none is there; true if there is one now. */
    boolean offerIfIdle(LiveCapture capture) {
        if (capture.evening.phase() != LiveCourse.Phase.IDLE) {
            return false;
        }
        Optional<Scramble> next = scrambles.next();
        next.ifPresent(scramble -> capture.evening.offer(scramble, capture.cube.relative(), nowMicros()));
        return next.isPresent();
    }

    void keepReference(LiveCapture capture, long atMicros) {
        CubeState reference = capture.cube.reference();
        keep(capture, journal -> journal.reference(reference, atMicros));
    }

    void keepScramble(LiveCapture capture, LiveCourse.Done done) {
        keep(capture, journal -> journal.scramble(done.scramble(), done.announcedMicros()));
    }

    private void keep(LiveCapture capture, Consumer<TellingJournal> what) {
        if (capture.journal().isEmpty()) {
            LOG.warn("something was announced before the capture was ready; it is not kept");
            return;
        }
        TellingJournal journal = capture.journal().get();
        try {
            desk.execute(() -> keepNow(journal, what));
        } catch (RejectedExecutionException closing) {
            keepNow(journal, what);
        }
    }

    private static void keepNow(TellingJournal journal, Consumer<TellingJournal> what) {
        try {
            what.accept(journal);
        } catch (RuntimeException e) {
            LOG.warn("what was announced could not be kept; the analysis will infer where the scramble ended", e);
        }
    }

    void tellTurn(LiveCapture capture, TurnSensed sensed, long atMicros) {
        if (hearers.isEmpty() || !isRunning(capture)) {
            return;
        }
        ObjectNode node = Json.object();
        node.put("turn", sensed.turn().toString())
                .put("source", sensed.source().name().toLowerCase(Locale.ROOT))
                .put("at_us", atMicros);
        tell("turn", withEvening(node, capture));
    }

    void tellEvening(LiveCapture capture) {
        if (isRunning(capture)) {
            tell("evening", withEvening(Json.object(), capture));
        }
    }

    private ObjectNode withEvening(ObjectNode node, LiveCapture capture) {
        node.put("now_us", nowMicros());
        node.set("cube", LiveJson.cube(capture.cube.relative()));
        node.set("evening", LiveJson.evening(capture.evening));
        return node;
    }

    private void tell(String event, ObjectNode node) {
        if (!hearers.isEmpty()) {
            LiveMessage message = new LiveMessage(event, Json.write(node));
            hearers.forEach(hearer -> hearer.accept(message));
        }
    }

    private ObjectNode state() {
        ObjectNode node = Json.object();
        node.put("now_us", nowMicros());
        node.set("link", link());
        if (running.isEmpty()) {
            return node.putNull("colours").putNull("cube").putNull("evening").putNull("turns");
        }
        LiveCapture capture = running.get();
        node.set("colours", LiveJson.colours(capture.colours));
        withEvening(node, capture);
        node.set("turns", LiveJson.turns(capture.evening.solve()));
        return node;
    }

    private ObjectNode link() {
        return LiveJson.link(
                running.map(LiveCapture::link).orElse(LinkView.IDLE),
                running.map(LiveCapture::battery).orElse(OptionalInt.empty()),
                warnings.get());
    }

    private long nowMicros() {
        return clock.nanos() / NANOS_PER_MICRO;
    }

    /** Keeps what waits to be kept and ends the thread. */
    @Override
    public void close() {
        desk.shutdown();
        try {
            if (!desk.awaitTermination(10, TimeUnit.SECONDS)) {
                LOG.warn("an announced scramble waits for the disk and is given up");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
