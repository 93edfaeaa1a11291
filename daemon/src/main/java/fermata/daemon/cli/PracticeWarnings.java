package fermata.daemon.cli;

import fermata.daemon.cli.asked.CheckProgress;
import fermata.daemon.listening.BackgroundRenewal;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.RowCheck;
import fermata.daemon.store.Store;
import java.io.PrintWriter;
import java.util.List;

/** What is not well with the practice while it is listened to. {@link #now()} is for any thread, the rest for one. */
final class PracticeWarnings {
    private final Store store;
    private final PrintWriter err;
    private volatile List<String> now;

    /** With what was noticed when the store was opened, which is said already. */
    PracticeWarnings(Store store, PrintWriter err) {
        this.store = store;
        this.err = err;
        this.now = store.warnings();
    }

    /** Compares all that was recorded with its checksums and says what is not as it was; takes as long as it takes. */
    void check(Practice practice, BackgroundRenewal background) {
        RowCheck.Progress told = new CheckProgress(err);
        practice.checkRows((done, left) -> {
            background.goOn();
            told.begins(done, left);
        });
        List<String> before = now;
        now = store.warnings();
        now.stream().filter(warning -> !before.contains(warning)).forEach(news -> err.println("warning: " + news));
        err.flush();
    }

    /** A sentence each. */
    List<String> now() {
        return now;
    }
}
