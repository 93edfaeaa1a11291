package fermata.daemon.recording;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.CaptureCounts;
import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.JournalOutage;
import fermata.daemon.store.CaptureJournal;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Store;
import fermata.daemon.time.MonotonicClock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletionException;

/** A running capture into a store. Safe for use by many threads. */
public final class Recording implements AutoCloseable {
    private static final String SOURCE = "radio";

    private final long captureId;
    private final BluetoothCapture capture;

    private Recording(long captureId, BluetoothCapture capture) {
        this.captureId = captureId;
        this.capture = capture;
    }

    /**
     * Begins a capture in the store and starts to listen; returns at once.
     *
     * @param clock what all waits run by; share it with a virtual cube
     * @param truth what is known of it from elsewhere, as JSON; else empty
     * @param listeners told after each commit
     */
    public static Recording start(
            Store store, RecordingPlan plan, MonotonicClock clock, String truth, List<CaptureListener> listeners) {
        CaptureStart start = new CaptureStart(
                UUID.randomUUID(),
                BootId.now(),
                plan.startedWall(),
                plan.isDated(),
                clock.nanos(),
                plan.zone(),
                plan.origin(),
                SOURCE);
        CaptureJournal journal = store.captures().begin(start, plan.profileText(), truth);
        BluetoothCapture capture = BluetoothCapture.start(
                plan.busAddress(), CaptureTarget.of(plan.profile()), plan.settings(), clock, journal, listeners);
        return new Recording(journal.captureId(), capture);
    }

    /** The capture's number in the store. */
    public long captureId() {
        return captureId;
    }

    /** The counters as they stand. */
    public CaptureCounts counts() {
        return capture.counts();
    }

    /** What the journal cannot do just now; while it lasts, what is heard waits in memory. */
    public Optional<JournalOutage> outage() {
        return capture.outage();
    }

    /** The outage before, once it was over. */
    public Optional<JournalOutage> lastOutage() {
        return capture.lastOutage();
    }

    /** Where the link is. */
    public LinkStatus status() {
        return capture.status();
    }

    /** Whether it has come to an end, by itself or by {@link #finish()}. */
    public boolean isOver() {
        return capture.ended().isDone();
    }

    /** Throws what made it stop, if it had to. */
    public void check() {
        try {
            capture.ended().getNow(null);
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException runtime ? runtime : e;
        }
    }

    /**
     * Hangs up, commits what waits, and gives the final counters.
     *
     * @throws fermata.daemon.capture.JournalException if something could not be committed
     */
    public CaptureCounts finish() {
        capture.close();
        check();
        return capture.counts();
    }

    /** Hangs up and commits what waits. */
    @Override
    public void close() {
        capture.close();
    }
}
