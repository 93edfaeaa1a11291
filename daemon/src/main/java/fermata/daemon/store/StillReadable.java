package fermata.daemon.store;

import fermata.daemon.salvage.Salvage;
import fermata.daemon.salvage.SalvagedRow;
import java.io.IOException;
import java.util.BitSet;

/**
 * How much of a damaged database can still be read, without SQLite and without a change to it: rows whose checksums are
 * right, each counted once. Rows of programs before schema 7 have none and are not counted.
 *
 * @param captures whose own rows are as they were written
 * @param frames by their numbers
 * @param events told ones, by their numbers
 */
record StillReadable(int captures, int frames, int events) {
    private static final String FRAME = "iiiiibii";
    private static final String EVENT = "iiittii";

    /**
     * Looks at a home's database and its log. No connection of this process may have them open. Cost: two passes over
     * their bytes.
     */
    static StillReadable of(Home home) throws IOException {
        SourceRows source = new SourceRows();
        BitSet frames = new BitSet();
        BitSet events = new BitSet();
        try (Salvage salvage = Salvage.open(home.database(), home.log())) {
            salvage.rows(source::take);
            salvage.rows(row -> {
                if (row.hasKinds(FRAME)
                        && isNumber(row.number(6))
                        && source.heardOn(row).isPresent()) {
                    frames.set((int) row.number(6));
                } else if (row.hasKinds(EVENT) && isNumber(row.number(5)) && isSound(row)) {
                    events.set((int) row.number(5));
                }
            });
        }
        int captures = (int) source.captures().values().stream()
                .filter(SourceRows.Found::isSummed)
                .count();
        return new StillReadable(captures, frames.cardinality(), events.cardinality());
    }

    /** Nonsense may look like a row with any number. */
    private static boolean isNumber(long number) {
        return number > 0 && number < Integer.MAX_VALUE;
    }

    private static boolean isSound(SalvagedRow row) {
        ToldEvent event = new ToldEvent(row.text(3), (int) row.number(2), row.text(4));
        return FrameRows.sum(row.number(0), row.number(1), event, row.number(5)) == row.number(6);
    }

    /** The same complaint, which then says how much can be read, too; others stay as they are. */
    static StoreException told(Home home, StoreException complaint) {
        if (complaint.fault() != StoreFault.DAMAGED) {
            return complaint;
        }
        try {
            StillReadable left = of(home);
            String counted = left.frames + " frames and " + left.events + " told events of " + left.captures
                    + " captures in it are as they were written";
            return new StoreException(StoreFault.DAMAGED, complaint.getMessage() + "; " + counted, complaint);
        } catch (IOException unreadable) {
            return new StoreException(
                    StoreFault.DAMAGED,
                    complaint.getMessage() + "; how much that is cannot be told: " + FileFaults.reason(unreadable),
                    complaint);
        }
    }
}
