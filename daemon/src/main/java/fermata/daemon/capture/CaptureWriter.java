package fermata.daemon.capture;

import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The loop that commits what was queued and then tells the listeners.
 *
 * <p>Assumptions: (1) one thread runs it; (2) the journal appends a group whole or not at all, and skips what it has.
 *
 * <p>Guarantees: (1) items reach the journal in queue order, each exactly once from the journal's point of view; (2) a
 * listener hears of an item after its commit and never before; (3) a failed group is kept and tried again, so nothing
 * queued is lost to a passing failure (full or failing disk, busy): it is retried with growing pauses for the
 * settings' patience; (4) a lasting failure (read-only, broken), or the end of the patience, stops the capture with the
 * journal's exception: what was acknowledged stays, what was not is counted; (5) a listener that throws is reported and
 * harms nobody else.
 */
final class CaptureWriter implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(CaptureWriter.class);

    /** Longer than any pause within a solve that goes on, shorter than any between two evenings. */
    private static final Duration REST = Duration.ofSeconds(10);

    private final PipelineSettings settings;
    private final MonotonicClock clock;
    private final CaptureQueue queue;
    private final FrameJournal journal;
    private final List<CaptureListener> listeners;
    private final CaptureCounters counters;
    private final CompletableFuture<Void> ended = new CompletableFuture<>();
    private volatile Optional<JournalOutage> outage = Optional.empty();
    private volatile Optional<JournalOutage> lastOutage = Optional.empty();
    /** An outage that is over and not noted in the journal yet. */
    private Optional<JournalOutage> owed = Optional.empty();

    CaptureWriter(
            PipelineSettings settings,
            MonotonicClock clock,
            CaptureQueue queue,
            FrameJournal journal,
            List<CaptureListener> listeners,
            CaptureCounters counters) {
        this.settings = settings;
        this.clock = clock;
        this.queue = queue;
        this.journal = journal;
        this.listeners = List.copyOf(listeners);
        this.counters = counters;
    }

    /** What the journal cannot do just now. */
    Optional<JournalOutage> outage() {
        return outage;
    }

    /** The outage before, once it was over. */
    Optional<JournalOutage> lastOutage() {
        return lastOutage;
    }

    /** Done when the queue was shut and emptied; exceptionally when the capture had to stop. */
    CompletableFuture<Void> ended() {
        return ended;
    }

    @Override
    public void run() {
        try {
            long committedAt = clock.nanos() - settings.gather().toNanos();
            while (awaitSomething()) {
                rest(Duration.ofNanos(clock.nanos() - committedAt));
                List<CapturedItem> group = queue.take(settings.groupItems());
                commit(group);
                committedAt = clock.nanos();
                tellListeners(group);
            }
            ended.complete(null);
        } catch (JournalException e) {
            stop(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            stop(new IllegalStateException("the capture's writer was interrupted", e));
        } catch (RuntimeException | Error e) {
            stop(new JournalException(JournalException.Fault.BROKEN, "the journal failed unexpectedly: " + e, e));
        }
    }

    /** The journal is put in order once each time that the cube rests. */
    private boolean awaitSomething() throws InterruptedException {
        if (!queue.awaitSomething(clock.machineNanos(REST))) {
            try {
                journal.rested();
            } catch (JournalException e) {
                LOG.warn("the journal could not be put in order, which is tried again later: {}", e.getMessage());
            }
        }
        return queue.awaitSomething();
    }

    /** Counted from the commit before, so that a turn after a pause is told at once. */
    private void rest(Duration sinceCommit) throws InterruptedException {
        queue.awaitRest(
                clock.machineNanos(settings.gather().minus(sinceCommit)),
                clock.machineNanos(settings.gatherTurns().minus(sinceCommit)));
    }

    private void stop(Throwable reason) {
        queue.shut();
        ended.completeExceptionally(reason);
    }

    private void commit(List<CapturedItem> group) throws InterruptedException {
        long firstTryAt = clock.nanos();
        long droppedBefore = counters.now().dropped();
        Duration pause = settings.firstRetry();
        while (true) {
            // Looked at before the try, so that what was mended before a close is never given up on.
            boolean lastTry = queue.awaitShut(0)
                    || clock.nanos() - firstTryAt > settings.patience().toNanos();
            try {
                journal.append(group);
                counters.framesCommitted(frames(group));
                mended(firstTryAt, droppedBefore);
                return;
            } catch (JournalException e) {
                counters.journalFailed();
                if (lastTry || !e.fault().isPassing()) {
                    throw givenUp(e, group);
                }
                outage = Optional.of(outageBy(e.fault(), e.getMessage(), firstTryAt, droppedBefore));
                LOG.warn("cannot commit {} items, will try again in {}: {}", group.size(), pause, e.getMessage());
                queue.awaitShut(clock.machineNanos(pause));
                pause = doubled(pause);
            }
        }
    }

    private JournalOutage outageBy(JournalException.Fault fault, String message, long sinceNanos, long droppedBefore) {
        return new JournalOutage(
                sinceNanos,
                Duration.ofNanos(Math.max(0, clock.nanos() - sinceNanos)),
                fault,
                message,
                counters.now().dropped() - droppedBefore);
    }

    /** Notes an outage that is over; what could not be noted is noted after a later commit. */
    private void mended(long sinceNanos, long droppedBefore) {
        if (outage.isPresent()) {
            JournalOutage over = outageBy(outage.get().fault(), outage.get().message(), sinceNanos, droppedBefore);
            outage = Optional.empty();
            lastOutage = Optional.of(over);
            owed = lastOutage;
        }
        if (owed.isPresent()) {
            try {
                journal.mended(owed.get());
                owed = Optional.empty();
            } catch (JournalException e) {
                LOG.warn("an outage is over and could not be noted yet: {}", e.getMessage());
            }
        }
    }

    private JournalException givenUp(JournalException e, List<CapturedItem> group) {
        long lost = frames(group) + queue.frames();
        return new JournalException(
                e.fault(), e.getMessage() + "; given up, and " + lost + " frames that waited are not kept", e);
    }

    private static long frames(List<CapturedItem> group) {
        return group.stream().filter(HeardFrame.class::isInstance).count();
    }

    private Duration doubled(Duration pause) {
        Duration twice = pause.multipliedBy(2);
        return twice.compareTo(settings.longestRetry()) < 0 ? twice : settings.longestRetry();
    }

    private void tellListeners(List<CapturedItem> group) {
        for (CaptureListener listener : listeners) {
            try {
                listener.committed(group);
            } catch (RuntimeException e) {
                LOG.warn("a listener of the capture failed; what it was told is safe in the journal", e);
            }
        }
    }
}
