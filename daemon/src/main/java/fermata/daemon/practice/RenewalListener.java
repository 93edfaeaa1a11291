package fermata.daemon.practice;

import java.time.LocalDate;

/** Is told how far deriving again has come; after an upgrade that may take a while. */
public interface RenewalListener {
    /** Does not listen. */
    RenewalListener SILENT = (day, done, left) -> {};

    /**
     * A day begins to be derived.
     *
     * @param day which
     * @param done how many days are done
     * @param left how many more are known to be left after it; may grow
     */
    void begins(LocalDate day, int done, int left);
}
