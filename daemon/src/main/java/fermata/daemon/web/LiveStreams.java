package fermata.daemon.web;

import fermata.daemon.http.Exchange;
import fermata.daemon.live.LiveFeed;
import fermata.daemon.live.LiveMessage;
import fermata.daemon.time.MonotonicClock;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * The live messages to every page that is open: Server-sent events (HTML Living Standard, 9.2).
 *
 * <p>No thread is held for a client. Whoever tells a message only puts it into each client's bounded queue; one thread
 * writes. A client whose queue is full, or that does not take its bytes within {@value #STALL_MILLIS} ms, is dropped;
 * if it is alive it comes again by itself and is told the whole state first.
 */
final class LiveStreams implements AutoCloseable {
    /** The most pages that listen at once. */
    static final int MOST_CLIENTS = 64;

    /** Half a minute of quick turning; a client that is so far behind needs the whole state, not the way to it. */
    static final int QUEUED_MESSAGES = 256;

    private static final long STALL_MILLIS = 200;
    /** A client that went without a word is noticed by the next write, so there is one. */
    private static final long SIGN_OF_LIFE_SECONDS = 15;

    /** So that a forgotten page does not listen for ever; one that is looked at begins another at once. */
    private static final long OLDEST_SECONDS = 900;

    private static final LiveMessage SIGN_OF_LIFE = new LiveMessage("", "");

    private final MonotonicClock clock = MonotonicClock.system();
    private final LiveFeed feed;
    private final WriteWatch watch;
    private final Set<Client> clients = ConcurrentHashMap.newKeySet();
    private final BlockingQueue<Client> ready = new LinkedBlockingQueue<>();
    private final Thread writer = new Thread(this::write, "pages-live");
    private volatile boolean closed;

    LiveStreams(LiveFeed feed, WriteWatch watch) {
        this.feed = feed;
        this.watch = watch;
        writer.setDaemon(true);
        writer.start();
    }

    /**
     * Begins a stream and returns; the exchange stays open. The caller has set the fields that all answers have.
     *
     * @param mayListen asked again and again: a pairing may be revoked
     * @return false if there are too many already; then nothing was sent
     */
    boolean open(Exchange exchange, BooleanSupplier mayListen) throws IOException {
        if (clients.size() >= MOST_CLIENTS) {
            return false;
        }
        exchange.set("Content-Type", "text/event-stream");
        exchange.set("Cache-Control", "no-store");
        OutputStream out = exchange.stream(200);
        Client client = new Client(exchange, out, mayListen);
        clients.add(client);
        client.leave = feed.join(client);
        if (closed || client.dropped) {
            drop(client);
        }
        return true;
    }

    /** How many pages listen. */
    int count() {
        return clients.size();
    }

    private final class Client implements Consumer<LiveMessage> {
        private final Exchange exchange;
        private final OutputStream out;
        private final BooleanSupplier mayListen;
        private final long begunNanos = clock.nanos();
        private final Queue<LiveMessage> queue = new ArrayDeque<>();
        private boolean waits;
        private boolean overflowed;
        private volatile boolean dropped;
        private volatile Runnable leave = () -> {};

        Client(Exchange exchange, OutputStream out, BooleanSupplier mayListen) {
            this.exchange = exchange;
            this.out = out;
            this.mayListen = mayListen;
        }

        @Override
        public void accept(LiveMessage message) {
            synchronized (this) {
                if (queue.size() >= QUEUED_MESSAGES) {
                    overflowed = true;
                } else {
                    queue.add(message);
                }
                if (waits) {
                    return;
                }
                waits = true;
            }
            ready.add(this);
        }

        private synchronized byte[] take() {
            waits = false;
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
            for (LiveMessage message = queue.poll(); message != null; message = queue.poll()) {
                bytes.writeBytes(written(message).getBytes(StandardCharsets.UTF_8));
            }
            return bytes.toByteArray();
        }

        private synchronized boolean isTooFarBehind() {
            return overflowed;
        }
    }

    private static String written(LiveMessage message) {
        if (message == SIGN_OF_LIFE) {
            return ":\n\n";
        }
        return "retry: 500\nevent: " + message.event() + "\ndata: " + message.json() + "\n\n";
    }

    private void write() {
        long signAt = clock.nanos() + TimeUnit.SECONDS.toNanos(SIGN_OF_LIFE_SECONDS);
        while (!closed) {
            try {
                Client client = ready.poll(Math.max(1, signAt - clock.nanos()), TimeUnit.NANOSECONDS);
                if (client != null) {
                    writeTo(client);
                }
            } catch (InterruptedException strayed) {
                // Only closing ends this thread; the loop looks.
                continue;
            }
            if (clock.nanos() - signAt >= 0) {
                signAt += TimeUnit.SECONDS.toNanos(SIGN_OF_LIFE_SECONDS);
                clients.forEach(this::sign);
            }
        }
        clients.forEach(this::drop);
    }

    private void sign(Client client) {
        boolean young = clock.nanos() - client.begunNanos < TimeUnit.SECONDS.toNanos(OLDEST_SECONDS);
        if (young && client.mayListen.getAsBoolean()) {
            client.accept(SIGN_OF_LIFE);
        } else {
            drop(client);
        }
    }

    private void writeTo(Client client) {
        if (client.dropped) {
            return;
        }
        if (client.isTooFarBehind()) {
            drop(client);
            return;
        }
        byte[] bytes = client.take();
        try {
            watch.within(Duration.ofMillis(STALL_MILLIS), () -> client.out.write(bytes));
        } catch (IOException goneOrStalled) {
            drop(client);
        }
    }

    private void drop(Client client) {
        client.dropped = true;
        clients.remove(client);
        client.leave.run();
        client.exchange.close();
    }

    @Override
    public void close() {
        closed = true;
        writer.interrupt();
    }
}
