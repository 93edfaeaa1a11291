package fermata.daemon.capture;

import fermata.daemon.time.MonotonicClock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;

/**
 * The bounded way from a radio to the journal: an intake for any thread, a queue, and one writer thread.
 *
 * <p>Safe for use by many threads. See {@link FrameJournal} for what a commit promises.
 */
public final class CapturePipeline implements AutoCloseable {
    private final CaptureCounters counters = new CaptureCounters();
    private final CaptureQueue queue;
    private final CaptureIntake intake;
    private final CaptureWriter writer;
    private final Thread writerThread;

    private CapturePipeline(
            PipelineSettings settings,
            MonotonicClock clock,
            Set<String> patient,
            FrameJournal journal,
            List<CaptureListener> listeners) {
        queue = new CaptureQueue(settings.queueFrames(), patient);
        intake = new CaptureIntake(queue, counters);
        writer = new CaptureWriter(settings, clock, queue, journal, listeners, counters);
        writerThread = new Thread(writer, "fermata-capture-writer");
        // Not a daemon thread: the JVM must not end between a frame's arrival and its commit.
        writerThread.start();
    }

    /**
     * Starts the writer.
     *
     * @param clock scales the pauses of the writer
     * @param patient UUIDs, in lower case, of the characteristics whose frames tell no turn and may wait for company
     * @param journal where everything goes; called by the writer thread alone
     * @param listeners told after each commit, in this order
     */
    public static CapturePipeline start(
            PipelineSettings settings,
            MonotonicClock clock,
            Set<String> patient,
            FrameJournal journal,
            List<CaptureListener> listeners) {
        return new CapturePipeline(settings, clock, patient, journal, listeners);
    }

    /** Where the radio hands in what it hears. */
    public CaptureIntake intake() {
        return intake;
    }

    /** The counters as they stand. */
    public CaptureCounts counts() {
        return counters.now();
    }

    /** What the journal cannot do just now; while it lasts, what is heard waits in memory. */
    public Optional<JournalOutage> outage() {
        return writer.outage();
    }

    /** The outage before, once it was over. */
    public Optional<JournalOutage> lastOutage() {
        return writer.lastOutage();
    }

    /**
     * Done after {@link #close()} has committed everything; exceptionally ({@link JournalException}) when the capture
     * had to stop.
     */
    public CompletableFuture<Void> ended() {
        return writer.ended().copy();
    }

    /** Lets nothing more in; the writer ends once it has committed what waits. Returns at once. */
    public void shut() {
        queue.shut();
    }

    /** Lets nothing more in, commits what waits and ends the writer. Failures show in {@link #ended()}. */
    @Override
    public void close() {
        shut();
        boolean interrupted = false;
        while (writerThread.isAlive()) {
            try {
                writerThread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
