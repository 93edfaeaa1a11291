package fermata.daemon.cli.asked;

import fermata.daemon.store.RowCheck;
import java.io.PrintWriter;

/** Says on the error output how far the check of all that was recorded has come, when it is about many captures. */
public final class CheckProgress implements RowCheck.Progress {
    private static final int WORTH_TELLING_CAPTURES = 100;

    private final PrintWriter err;

    public CheckProgress(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void begins(int done, int left) {
        boolean isLong = done + left >= WORTH_TELLING_CAPTURES;
        if (isLong && done % WORTH_TELLING_CAPTURES == 0) {
            err.println("comparing what was recorded with its checksums: " + done + " of " + (done + left)
                    + " captures done");
            err.flush();
        }
    }
}
