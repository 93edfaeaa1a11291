package fermata.daemon.store;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Compares everything that was heard and told with its checksums, so that a bit that the disk altered is named also
 * where nobody reads its practice any more. What is found is among {@link Store#missing()} from then on; a store that
 * can be written keeps it, so that others name it too.
 *
 * <p>One capture after the other, whose frames it holds in memory meanwhile. Costs: docs/data-model.md. For any thread.
 */
public final class RowCheck {
    private final Captures captures;
    private final LossNotes notes;
    private final Supplier<Optional<WriterThread>> writer;

    RowCheck(Captures captures, LossNotes notes, Supplier<Optional<WriterThread>> writer) {
        this.captures = captures;
        this.notes = notes;
        this.writer = writer;
    }

    /** Hears how far it has come. */
    @FunctionalInterface
    public interface Progress {
        /**
         * A capture is about to be read. What this throws ends the check; what was found before is kept.
         *
         * @param done how many were read before it
         * @param left how many are left, with this one
         */
        void begins(int done, int left);
    }

    /**
     * Reads them all.
     *
     * @throws StoreException if the practice cannot be read, or what was found cannot be kept
     */
    public void run(Progress progress) {
        List<CaptureRow> all = captures.all();
        try {
            for (int done = 0; done < all.size(); done++) {
                progress.begins(done, all.size() - done);
                captures.heard(all.get(done).id());
                captures.events(all.get(done).id());
            }
        } finally {
            keep(notes.missing());
        }
    }

    private void keep(List<Missing> found) {
        if (!found.isEmpty()) {
            writer.get()
                    .ifPresent(thread -> thread.write("note what the disk altered", connection -> {
                        for (Missing missing : found) {
                            MissingRows.note(connection, missing);
                        }
                        return null;
                    }));
        }
    }
}
