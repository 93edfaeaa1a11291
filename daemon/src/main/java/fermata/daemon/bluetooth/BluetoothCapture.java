package fermata.daemon.bluetooth;

import fermata.daemon.capture.CaptureCounts;
import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturePipeline;
import fermata.daemon.capture.FrameJournal;
import fermata.daemon.capture.JournalOutage;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.time.MonotonicClock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/**
 * A running capture: a central on a bus, and the pipeline to the journal. What {@code listen} and the demo start.
 *
 * <p>Three threads: the bus's signal thread (stamps and enqueues), the central (finds, connects, keeps alive) and the
 * writer (commits, then tells the listeners). Safe for use by many threads.
 */
public final class BluetoothCapture implements AutoCloseable {
    /** The bus that a real BlueZ is on. */
    public static final String SYSTEM_BUS = "system";

    private final CapturePipeline pipeline;
    private final BluetoothCentral central;
    private final Thread centralThread;
    private final CompletableFuture<Void> ended;

    /**
     * How to capture.
     *
     * @param central the central's patience
     * @param pipeline the queue's size and the journal's patience
     */
    public record Settings(CentralSettings central, PipelineSettings pipeline) {
        /** For a board that nobody watches. */
        public static Settings usual() {
            return new Settings(CentralSettings.usual(), PipelineSettings.forBoard());
        }
    }

    private BluetoothCapture(
            String busAddress,
            CaptureTarget target,
            Settings settings,
            MonotonicClock clock,
            CapturePipeline pipeline) {
        this.pipeline = pipeline;
        central = new BluetoothCentral(busAddress, target, settings.central(), pipeline.intake(), clock);
        CompletableFuture<Void> journal = pipeline.ended();
        ended = CompletableFuture.allOf(central.ended(), journal);
        journal.whenComplete((nothing, failure) -> central.stop());
        // Else a central that had to stop would leave a capture that hears nothing and never ends.
        central.ended().whenComplete((nothing, failure) -> pipeline.shut());
        centralThread = new Thread(central, "fermata-central");
        centralThread.setDaemon(true);
        centralThread.start();
    }

    /**
     * Starts to capture and returns at once.
     *
     * @param busAddress {@link #SYSTEM_BUS}, or a D-Bus address such as {@code unix:path=...}
     * @param target which device, and what to do with it
     * @param clock what all waits run by; share it with a virtual cube
     * @param journal where everything goes
     * @param listeners told after each commit, by the writer thread
     */
    public static BluetoothCapture start(
            String busAddress,
            CaptureTarget target,
            Settings settings,
            MonotonicClock clock,
            FrameJournal journal,
            List<CaptureListener> listeners) {
        CapturePipeline pipeline =
                CapturePipeline.start(settings.pipeline(), clock, target.patient(), journal, listeners);
        return new BluetoothCapture(busAddress, target, settings, clock, pipeline);
    }

    /** The counters as they stand. */
    public CaptureCounts counts() {
        return pipeline.counts();
    }

    /** What the journal cannot do just now; while it lasts, what is heard waits in memory. */
    public Optional<JournalOutage> outage() {
        return pipeline.outage();
    }

    /** The outage before, once it was over. */
    public Optional<JournalOutage> lastOutage() {
        return pipeline.lastOutage();
    }

    /** Where the central is; or that the journal refuses what is heard, which matters more. */
    public LinkStatus status() {
        LinkStatus link = central.status();
        boolean isOver = link.state() == LinkStatus.State.STOPPED;
        return isOver
                ? link
                : pipeline.outage()
                        .map(JournalOutage::message)
                        .map(why -> new LinkStatus(LinkStatus.State.HELD_IN_MEMORY, why))
                        .orElse(link);
    }

    /**
     * Done after {@link #close()}; exceptionally when the capture had to stop: a
     * {@link fermata.daemon.capture.JournalException} when the journal failed, else a fault of our own making.
     */
    public CompletableFuture<Void> ended() {
        return ended.copy();
    }

    /** Hangs up, commits what waits and ends. Failures show in {@link #ended()}. */
    @Override
    public void close() {
        central.stop();
        boolean interrupted = false;
        while (centralThread.isAlive()) {
            try {
                centralThread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        pipeline.close();
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
