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

    private final PipelineSettings settings;
    private final MonotonicClock clock;
    private final CaptureQueue queue;
    private final FrameJournal journal;
    private final List<CaptureListener> listeners;
    private final CaptureCounters counters;
    private final CompletableFuture<Void> ended = new CompletableFuture<>();
    private volatile Optional<String> trouble = Optional.empty();

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

    /** Done when the queue was shut and emptied; exceptionally when the capture had to stop. */
    CompletableFuture<Void> ended() {
        return ended;
    }

    /** What the journal said when it last refused, as long as it refuses. */
    Optional<String> trouble() {
        return trouble;
    }

    @Override
    public void run() {
        try {
            long committedAt = clock.nanos() - settings.gather().toNanos();
            while (queue.awaitSomething()) {
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
        Duration pause = settings.firstRetry();
        while (true) {
            // Looked at before the try, so that what was mended before a close is never given up on.
            boolean lastTry = queue.awaitShut(0)
                    || clock.nanos() - firstTryAt > settings.patience().toNanos();
            try {
                journal.append(group);
                counters.framesCommitted(
                        group.stream().filter(HeardFrame.class::isInstance).count());
                trouble = Optional.empty();
                return;
            } catch (JournalException e) {
                counters.journalFailed();
                trouble = Optional.of(String.valueOf(e.getMessage()));
                if (lastTry || !e.fault().isPassing()) {
                    throw e;
                }
                LOG.warn("cannot commit {} items, will try again in {}: {}", group.size(), pause, e.getMessage());
                queue.awaitShut(clock.machineNanos(pause));
                pause = doubled(pause);
            }
        }
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
