package fermata.daemon.web;

import fermata.daemon.time.MonotonicClock;
import java.io.IOException;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;

/**
 * Cuts off clients that do not take what they asked for. The JDK's server writes to sockets that block; an interrupt
 * closes such a socket under the write (java.nio.channels.InterruptibleChannel), and the write fails.
 *
 * <p>Safe for use by many threads; one daemon thread watches, and sleeps while nobody writes.
 */
final class WriteWatch implements AutoCloseable {
    private static final long LOOK_EVERY_MILLIS = 25;

    private final MonotonicClock clock = MonotonicClock.system();
    private final Set<Ticket> open = new HashSet<>();
    private boolean closed;

    /** Something that writes to a client. */
    @FunctionalInterface
    interface Writing {
        void write() throws IOException;
    }

    private record Ticket(Thread thread, long deadlineNanos) {}

    WriteWatch() {
        Thread thread = new Thread(this::watch, "pages-watch");
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Lets the calling thread write for so long and no longer.
     *
     * @throws IOException if the client went, or was cut off
     */
    void within(Duration limit, Writing writing) throws IOException {
        Ticket ticket = new Ticket(Thread.currentThread(), clock.nanos() + limit.toNanos());
        synchronized (this) {
            open.add(ticket);
            if (open.size() == 1) {
                notifyAll();
            }
        }
        try {
            writing.write();
        } finally {
            synchronized (this) {
                if (!open.remove(ticket)) {
                    // The interrupt was for this write alone; the next one's client must not pay for it.
                    Thread.interrupted();
                }
            }
        }
    }

    private synchronized void watch() {
        try {
            while (!closed) {
                if (open.isEmpty()) {
                    wait();
                } else {
                    wait(LOOK_EVERY_MILLIS);
                    long now = clock.nanos();
                    open.removeIf(ticket -> isOverdue(ticket, now));
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean isOverdue(Ticket ticket, long now) {
        boolean overdue = now - ticket.deadlineNanos() > 0;
        if (overdue) {
            ticket.thread().interrupt();
        }
        return overdue;
    }

    @Override
    public synchronized void close() {
        closed = true;
        notifyAll();
    }
}
