package fermata.daemon.capture;

import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Counts what happens during one capture. Every method may be called by any thread; {@link #now()} is a fair, not an
 * atomic picture.
 */
public final class CaptureCounters {
    private final AtomicLong received = new AtomicLong();
    private final AtomicLong committed = new AtomicLong();
    private final AtomicLong dropped = new AtomicLong();
    private final AtomicLong connections = new AtomicLong();
    private final AtomicLong journalFailures = new AtomicLong();
    private final Map<LinkFault, AtomicLong> faults = new EnumMap<>(LinkFault.class);

    public CaptureCounters() {
        for (LinkFault fault : LinkFault.values()) {
            faults.put(fault, new AtomicLong());
        }
    }

    void frameReceived() {
        received.incrementAndGet();
    }

    void framesCommitted(long frames) {
        committed.addAndGet(frames);
    }

    void frameDropped() {
        dropped.incrementAndGet();
    }

    void connectionUp() {
        connections.incrementAndGet();
    }

    void journalFailed() {
        journalFailures.incrementAndGet();
    }

    void faultMet(LinkFault fault) {
        faults.get(fault).incrementAndGet();
    }

    /** The counters as they stand. */
    public CaptureCounts now() {
        Map<LinkFault, Long> met = new EnumMap<>(LinkFault.class);
        faults.forEach((fault, count) -> {
            if (count.get() > 0) {
                met.put(fault, count.get());
            }
        });
        return new CaptureCounts(
                received.get(), committed.get(), dropped.get(), connections.get(), journalFailures.get(), met);
    }
}
