package fermata.daemon.live;

import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.IntFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A few scrambles in advance. When they run short, more are made on a thread of its own; if that fails, it is tried
 * again after a pause. Safe for use by many threads.
 */
public final class ScrambleStock implements ScrambleSource, AutoCloseable {
    /** How many are made at a time: the process that makes them mostly starts and builds tables. */
    static final int BATCH = 12;

    /** From how few on more are made. */
    static final int FEW = 4;

    private static final Logger LOG = LoggerFactory.getLogger(ScrambleStock.class);
    private static final long PAUSE_SECONDS = 20;

    private final IntFunction<List<Scramble>> maker;
    private final Queue<Scramble> stock = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean making = new AtomicBoolean();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "fermata-scrambles");
        made.setDaemon(true);
        return made;
    });

    private ScrambleStock(IntFunction<List<Scramble>> maker) {
        this.maker = maker;
    }

    /**
     * Begins to fill the stock and returns.
     *
     * @param maker makes so many scrambles, in its own time
     */
    public static ScrambleStock start(IntFunction<List<Scramble>> maker) {
        ScrambleStock stock = new ScrambleStock(maker);
        stock.fillIfFew();
        return stock;
    }

    @Override
    public Optional<Scramble> next() {
        Optional<Scramble> next = Optional.ofNullable(stock.poll());
        fillIfFew();
        return next;
    }

    private void fillIfFew() {
        if (stock.size() <= FEW && !thread.isShutdown() && making.compareAndSet(false, true)) {
            thread.execute(this::fill);
        }
    }

    private void fill() {
        try {
            stock.addAll(maker.apply(BATCH));
        } catch (RuntimeException e) {
            if (!thread.isShutdown()) {
                LOG.warn("no scrambles could be made; trying again in {} s", PAUSE_SECONDS, e);
                pause();
            }
        } finally {
            making.set(false);
        }
    }

    private static void pause() {
        try {
            TimeUnit.SECONDS.sleep(PAUSE_SECONDS);
        } catch (InterruptedException closing) {
            Thread.currentThread().interrupt();
        }
    }

    /** Makes no more. */
    @Override
    public void close() {
        thread.shutdownNow();
    }
}
