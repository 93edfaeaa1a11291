package fermata.daemon.web;

import fermata.daemon.live.LiveFeed;
import fermata.daemon.live.LiveMessage;
import fermata.daemon.time.MonotonicClock;
import io.undertow.server.HttpServerExchange;
import io.undertow.server.ServerConnection;
import io.undertow.server.handlers.sse.ServerSentEventConnection;
import io.undertow.server.handlers.sse.ServerSentEventConnection.EventCallback;
import io.undertow.server.handlers.sse.ServerSentEventHandler;
import io.undertow.util.Headers;
import java.io.IOException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.xnio.IoUtils;
import org.xnio.XnioExecutor;

/**
 * The live messages to every page that is open: Server-sent events (HTML Living Standard, 9.2).
 *
 * <p>No thread is held for a client. Whoever tells a message only puts it into each client's queue; the port's thread
 * writes as much as each client takes, and waits for none. A client that is {@value #QUEUED_MESSAGES} messages behind
 * is dropped; if it is alive it comes again by itself and is told the whole state first.
 */
final class LiveStreams implements AutoCloseable {
    /** The most pages that listen at once. */
    static final int MOST_CLIENTS = 64;

    /** Half a minute of quick turning; a client that is so far behind needs the whole state, not the way to it. */
    static final int QUEUED_MESSAGES = 256;

    private static final long RETRY_MILLIS = 500;
    /** A client that went without a word is noticed by the next write, so there is one; a pairing may be revoked. */
    private static final long SIGN_OF_LIFE_MILLIS = 15_000;

    /** So that a forgotten page does not listen for ever; one that is looked at begins another at once. */
    private static final long OLDEST_SECONDS = 900;

    private final MonotonicClock clock = MonotonicClock.system();
    private final LiveFeed feed;
    private final Set<Client> clients = ConcurrentHashMap.newKeySet();
    private final AtomicInteger places = new AtomicInteger();
    private volatile boolean closed;

    LiveStreams(LiveFeed feed) {
        this.feed = feed;
    }

    /**
     * Begins a stream and returns; the exchange stays open. The caller has set the fields that all answers have.
     *
     * @param mayListen asked again and again: a pairing may be revoked
     * @return false if there are too many already; then nothing was sent
     */
    boolean open(HttpServerExchange exchange, BooleanSupplier mayListen) throws Exception {
        if (!takesPlace(exchange.getConnection())) {
            return false;
        }
        exchange.getResponseHeaders().put(Headers.CACHE_CONTROL, "no-store");
        new ServerSentEventHandler((stream, last) -> new Client(exchange, stream, mayListen).begin())
                .handleRequest(exchange);
        return true;
    }

    /** Takes one of the places, if one is free, until the connection ends: a stream lasts as long as that. */
    private boolean takesPlace(ServerConnection connection) {
        if (places.incrementAndGet() > MOST_CLIENTS) {
            places.decrementAndGet();
            return false;
        }
        AtomicBoolean isTaken = new AtomicBoolean(true);
        Runnable leaving = () -> {
            if (isTaken.getAndSet(false)) {
                places.decrementAndGet();
            }
        };
        connection.addCloseListener(same -> leaving.run());
        if (!connection.isOpen()) {
            // Nobody tells those who come to listen afterwards.
            leaving.run();
        }
        return true;
    }

    private final class Client implements Consumer<LiveMessage>, EventCallback {
        private final HttpServerExchange exchange;
        private final ServerSentEventConnection stream;
        private final BooleanSupplier mayListen;
        private final XnioExecutor.Key looks;
        private final long begunNanos = clock.nanos();
        private final AtomicInteger queued = new AtomicInteger();
        private volatile Runnable leave = () -> {};

        Client(HttpServerExchange exchange, ServerSentEventConnection stream, BooleanSupplier mayListen) {
            this.exchange = exchange;
            this.stream = stream;
            this.mayListen = mayListen;
            looks = exchange.getIoThread()
                    .executeAtInterval(
                            () -> hand(exchange.getConnection().getWorker(), this::look),
                            SIGN_OF_LIFE_MILLIS,
                            TimeUnit.MILLISECONDS);
        }

        void begin() {
            clients.add(this);
            stream.addCloseTask(same -> gone());
            stream.sendRetry(RETRY_MILLIS);
            stream.setKeepAliveTime(SIGN_OF_LIFE_MILLIS);
            leave = feed.join(this);
            if (closed || !clients.contains(this)) {
                end();
            }
        }

        private void look() {
            boolean young = clock.nanos() - begunNanos < TimeUnit.SECONDS.toNanos(OLDEST_SECONDS);
            if (!young || !mayListen.getAsBoolean()) {
                drop();
            }
        }

        @Override
        public void accept(LiveMessage message) {
            if (queued.incrementAndGet() > QUEUED_MESSAGES) {
                drop();
                return;
            }
            try {
                stream.send(message.json(), message.event(), null, this);
            } catch (RejectedExecutionException closing) {
                gone();
            }
        }

        @Override
        public void done(ServerSentEventConnection same, String data, String event, String id) {
            queued.decrementAndGet();
        }

        @Override
        public void failed(ServerSentEventConnection same, String data, String event, String id, IOException why) {
            gone();
        }

        private void gone() {
            clients.remove(this);
            looks.remove();
            // Not by this thread: it holds the stream, which whoever is telling a message now may be waiting for.
            hand(exchange.getConnection().getWorker(), leave);
        }

        private void end() {
            leave.run();
            drop();
        }

        private void drop() {
            hand(exchange.getIoThread(), () -> IoUtils.safeClose(exchange.getConnection()));
        }
    }

    private static void hand(Executor executor, Runnable task) {
        try {
            executor.execute(task);
        } catch (RejectedExecutionException closing) {
            // The port was closed, and all connections with it; there is nothing left to do.
            return;
        }
    }

    @Override
    public void close() {
        closed = true;
        clients.forEach(Client::end);
    }
}
