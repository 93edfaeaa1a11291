package fermata.daemon.salvage;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Consumer;

/** A damaged database, to be read as often as needed. Linear in its bytes each time; not thread-safe. */
public final class Salvage implements AutoCloseable {
    private final PageImages images;

    private Salvage(PageImages images) {
        this.images = images;
    }

    /**
     * Opens its files. No connection of this process may have them open: closing them would let go of its locks
     * (sqlite.org/howtocorrupt.html, section 2.2).
     *
     * @param database its file; need not be there
     * @param log its write-ahead log; need not be there
     */
    public static Salvage open(Path database, Path log) throws IOException {
        return new Salvage(PageImages.of(database, log));
    }

    /** Gives every record, in no order, some of them more than once, some of them nonsense. */
    public void rows(Consumer<SalvagedRow> taker) throws IOException {
        Cells cells = new Cells(images, taker);
        for (int index = 0; index < images.count(); index++) {
            cells.read(images.image(index));
        }
    }

    @Override
    public void close() throws IOException {
        images.close();
    }
}
