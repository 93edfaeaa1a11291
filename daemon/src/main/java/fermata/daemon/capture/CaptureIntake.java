package fermata.daemon.capture;

/**
 * Where a radio hands in what it hears. Numbers the items and puts them into the bounded queue; never blocks on the
 * disk.
 *
 * <p>Any thread may call; the order of the calls is the order in the journal.
 */
public final class CaptureIntake {
    private final CaptureQueue queue;
    private final CaptureCounters counters;

    private long connection;
    private long nextOrdinal;

    CaptureIntake(CaptureQueue queue, CaptureCounters counters) {
        this.queue = queue;
        this.counters = counters;
    }

    /**
     * Takes a frame, or counts it as dropped when the queue is full.
     *
     * @param characteristicUuid 128-bit UUID of the characteristic
     * @param arrivalNanos the capture clock's reading, taken before anything else was done
     * @param bytes the payload; copied
     */
    public synchronized void frame(String characteristicUuid, long arrivalNanos, byte[] bytes) {
        counters.frameReceived();
        if (!queue.offer(new HeardFrame(connection, nextOrdinal++, characteristicUuid, arrivalNanos, bytes))) {
            counters.frameDropped();
        }
    }

    /** Begins the next connection with {@code change} as its first item and returns its number. */
    public synchronized long connected(long atNanos, LinkChange.Connected change) {
        connection++;
        nextOrdinal = 0;
        counters.connectionUp();
        link(atNanos, change);
        return connection;
    }

    /** Takes a change of the link; these are few and are never dropped while the writer lives. */
    public synchronized void link(long atNanos, LinkChange change) {
        if (change instanceof LinkChange.Refused refused) {
            counters.faultMet(refused.fault());
        }
        queue.add(new LinkEvent(connection, nextOrdinal++, atNanos, change));
    }
}
