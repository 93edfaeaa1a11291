package fermata.daemon.cli;

import fermata.daemon.capture.JournalOutage;
import fermata.daemon.cli.text.Words;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.Optional;

/**
 * Says once when nothing can be kept and once when it can again. {@link #now()} is for any thread, the rest for one.
 */
final class Outages {
    private final PrintWriter err;
    private volatile Optional<String> now = Optional.empty();
    private long toldSinceNanos = -1;
    private Optional<JournalOutage> toldOver = Optional.empty();

    Outages(PrintWriter err) {
        this.err = err;
    }

    /**
     * Looks what has changed.
     *
     * @param outage the one that goes on
     * @param last the last one that is over
     */
    void look(Optional<JournalOutage> outage, Optional<JournalOutage> last) {
        now = outage.map(Outages::sentence);
        outage.filter(each -> each.sinceNanos() != toldSinceNanos).ifPresent(begun -> {
            toldSinceNanos = begun.sinceNanos();
            err.println(sentence(begun));
            err.flush();
        });
        if (last.isPresent() && !last.equals(toldOver)) {
            toldOver = last;
            err.println(over(last.get()));
            err.flush();
        }
    }

    /** What cannot be kept just now, in a sentence. */
    Optional<String> now() {
        return now;
    }

    private static String sentence(JournalOutage outage) {
        return "What the cube says cannot be kept just now and waits in memory, for ten minutes at most: "
                + outage.message();
    }

    private static String over(JournalOutage outage) {
        return "what the cube says is kept again, after " + length(outage.lasted())
                + (outage.framesDropped() == 0
                        ? "; nothing was lost"
                        : "; " + Words.counted(outage.framesDropped(), "frame") + " found no room meanwhile");
    }

    private static String length(Duration lasted) {
        return lasted.toSeconds() < 60
                ? Words.counted(lasted.toSeconds(), "second")
                : Words.counted(lasted.toMinutes(), "minute");
    }
}
