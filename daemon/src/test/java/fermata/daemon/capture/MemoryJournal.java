package fermata.daemon.capture;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** A journal in memory that keeps the contract: whole groups, repeated items once. It can be told to fail. */
public final class MemoryJournal implements FrameJournal {
    private final List<CapturedItem> items = new ArrayList<>();
    private JournalException failure;
    private int calls;

    @Override
    public synchronized void append(List<CapturedItem> group) {
        calls++;
        notifyAll();
        if (failure != null) {
            throw failure;
        }
        items.addAll(group);
    }

    /** From now on every append fails; null mends it. */
    public synchronized void failWith(JournalException.Fault fault) {
        failure = fault == null ? null : new JournalException(fault, "journal test.db: " + fault, null);
    }

    /** What is on the disk. */
    public synchronized List<CapturedItem> items() {
        return List.copyOf(items);
    }

    /** The frames on the disk. */
    public List<HeardFrame> frames() {
        return items().stream()
                .filter(HeardFrame.class::isInstance)
                .map(HeardFrame.class::cast)
                .toList();
    }

    /** The changes of the link on the disk. */
    public List<LinkChange> changes() {
        return items().stream()
                .filter(LinkEvent.class::isInstance)
                .map(item -> ((LinkEvent) item).change())
                .toList();
    }

    /** How often append was called. */
    public synchronized int calls() {
        return calls;
    }

    /** Waits until the condition holds after some append, at most {@code limit} of real time. */
    public synchronized void await(Predicate<MemoryJournal> condition, Duration limit) throws InterruptedException {
        long until = System.nanoTime() + limit.toNanos();
        while (!condition.test(this)) {
            long leftMillis = (until - System.nanoTime()) / 1_000_000;
            if (leftMillis <= 0) {
                throw new AssertionError("not so within " + limit + "; journal holds " + items);
            }
            wait(Math.min(leftMillis, 20));
        }
    }
}
