package fermata.daemon.cli.asked;

import fermata.daemon.cli.text.Words;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.RenewalListener;
import java.io.PrintWriter;
import java.time.LocalDate;

/** Says on the error output how far deriving has come, when it is about more than a few days. */
public final class RenewalProgress implements RenewalListener {
    private static final int WORTH_TELLING_DAYS = 10;

    private final PrintWriter err;

    public RenewalProgress(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void begins(LocalDate day, int done, int left) {
        boolean isLong = done + left >= WORTH_TELLING_DAYS;
        if (isLong && done % WORTH_TELLING_DAYS == 0) {
            err.println("reading " + WrittenDay.of(day) + ": " + Words.counted(done, "day") + " done, about "
                    + (left + 1) + " to go");
            err.flush();
        }
    }
}
