package fermata.daemon.capture;

import java.util.Map;

/**
 * The counters of a capture at one moment.
 *
 * @param received frames that reached the process
 * @param committed frames that the journal acknowledged
 * @param dropped frames that found the queue full
 * @param connections connections that came up; one less is the number of reconnects
 * @param journalFailures calls of the journal that failed
 * @param faults how often each class of link error was met; classes never met are absent
 */
public record CaptureCounts(
        long received,
        long committed,
        long dropped,
        long connections,
        long journalFailures,
        Map<LinkFault, Long> faults) {
    public CaptureCounts {
        faults = Map.copyOf(faults);
    }

    /** Connections after the first. */
    public long reconnects() {
        return Math.max(0, connections - 1);
    }

    /** Frames that wait in memory for their commit. */
    public long waiting() {
        return received - committed - dropped;
    }

    /** How often errors of one class were met. */
    public long faults(LinkFault fault) {
        return faults.getOrDefault(fault, 0L);
    }
}
