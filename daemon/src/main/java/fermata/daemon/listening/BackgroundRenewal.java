package fermata.daemon.listening;

import fermata.daemon.practice.RenewalListener;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.concurrent.CancellationException;

/**
 * Derives on a thread of its own what is not derived yet, while a cube is listened to already, and then checks what
 * was recorded: after an upgrade that
 * can be a year of nights, and a fault in one of them must not keep the next from being recorded. Give it to the
 * practice as its listener; closing it waits for the day that is being derived and leaves the others for later.
 */
public final class BackgroundRenewal implements RenewalListener, AutoCloseable {
    private final RenewalListener told;
    private final PrintWriter err;
    private Thread thread = new Thread(() -> {}, "fermata-renewal");
    private volatile boolean stopping;
    private volatile boolean complete;

    /**
     * Not begun yet.
     *
     * @param told hears of every day, whoever has it derived
     * @param err what went wrong is said there
     */
    public BackgroundRenewal(RenewalListener told, PrintWriter err) {
        this.told = told;
        this.err = err;
    }

    /**
     * Begins.
     *
     * @param refresh must tell this object of each day before it begins it
     * @param check follows it, and should call {@link #goOn()} now and then
     */
    public void start(Runnable refresh, Runnable check) {
        thread = new Thread(() -> run(refresh, check), "fermata-renewal");
        thread.setDaemon(true);
        thread.start();
    }

    private void run(Runnable refresh, Runnable check) {
        try {
            refresh.run();
            complete = true;
            check.run();
        } catch (CancellationException e) {
            // Closed meanwhile; each day that was done is kept.
        } catch (RuntimeException e) {
            err.println("what was recorded before cannot all be read now (" + e + "); recording goes on");
            err.flush();
        }
    }

    @Override
    public void begins(LocalDate day, int done, int left) {
        goOn();
        told.begins(day, done, left);
    }

    /**
     * Returns if there is time to go on.
     *
     * @throws CancellationException on this object's own thread once it is being closed
     */
    public void goOn() {
        if (stopping && Thread.currentThread() == thread) {
            throw new CancellationException("closed");
        }
    }

    /** Whether it came to its end with nothing left to derive. */
    public boolean isComplete() {
        return complete;
    }

    @Override
    public void close() {
        stopping = true;
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
