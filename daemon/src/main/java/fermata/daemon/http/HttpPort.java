package fermata.daemon.http;

import fermata.daemon.http.Guests.Place;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Takes connections and has their requests answered, each connection on a thread of its own while it asks; a stream
 * needs none. Whoever has too many connections, sends a head for longer than {@value #HEAD_SECONDS} s or says nothing
 * for {@value #IDLE_SECONDS} s is hung up on. Thread-safe.
 */
public final class HttpPort implements AutoCloseable {
    static final int HEAD_SECONDS = 5;
    static final int IDLE_SECONDS = 30;

    private static final Logger LOG = Logger.getLogger(HttpPort.class.getName());

    /** So much of a body that nobody asked for is thrown away, and so long, before the connection ends. */
    private static final int DRAINED_BYTES = 65_536;

    private static final Duration DRAIN_PATIENCE = Duration.ofSeconds(2);

    private final ServerSocketChannel door;
    private final Guests guests;
    private final Handler handler;
    private final Set<SocketChannel> open = ConcurrentHashMap.newKeySet();
    private final ThreadPoolExecutor threads;

    /** Answers one request; called by many threads. */
    @FunctionalInterface
    public interface Handler {
        /** Answers, or begins a stream and returns while it goes on. */
        void handle(Exchange exchange) throws IOException;
    }

    private HttpPort(ServerSocketChannel door, Guests guests, Handler handler) {
        this.door = door;
        this.guests = guests;
        this.handler = handler;
        AtomicInteger number = new AtomicInteger();
        // Never more threads than guests, so none is refused.
        threads = new ThreadPoolExecutor(
                0, Integer.MAX_VALUE, IDLE_SECONDS, TimeUnit.SECONDS, new SynchronousQueue<>(), work -> {
                    Thread thread = new Thread(work, "pages-" + number.incrementAndGet());
                    thread.setDaemon(true);
                    return thread;
                });
    }

    /**
     * Opens a port.
     *
     * @param address where; port 0 for any free one
     * @param network how many connections other machines may have
     * @param here how many this machine
     * @throws IOException if the address is taken or not allowed
     */
    public static HttpPort open(InetSocketAddress address, Limits network, Limits here, Handler handler)
            throws IOException {
        ServerSocketChannel door = ServerSocketChannel.open();
        try {
            door.bind(address);
        } catch (IOException | RuntimeException refused) {
            door.close();
            throw refused;
        }
        HttpPort port = new HttpPort(door, new Guests(network, here), handler);
        Thread thread = new Thread(port::welcome, "pages-door");
        thread.setDaemon(true);
        thread.start();
        return port;
    }

    /** The TCP port. */
    public int port() {
        return door.socket().getLocalPort();
    }

    private void welcome() {
        while (door.isOpen()) {
            try {
                admit(door.accept());
            } catch (IOException failure) {
                // A client that went while it was let in, a machine out of files, or this port was closed.
                pause();
            }
        }
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(10);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void admit(SocketChannel channel) throws IOException {
        Optional<Place> place = guests.enter(((InetSocketAddress) channel.getRemoteAddress()).getAddress());
        if (place.isEmpty()) {
            channel.close();
            return;
        }
        open.add(channel);
        Runnable hangUp = () -> {
            open.remove(channel);
            closeQuietly(channel);
            place.get().leave();
        };
        try {
            channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
            threads.execute(() -> serve(channel, hangUp));
        } catch (IOException | RuntimeException failure) {
            hangUp.run();
        }
    }

    private void serve(SocketChannel channel, Runnable hangUp) {
        HeadReader reader = new HeadReader(channel, Duration.ofSeconds(IDLE_SECONDS), Duration.ofSeconds(HEAD_SECONDS));
        boolean goesOn = false;
        try {
            boolean asksAgain = true;
            while (asksAgain && !goesOn) {
                Optional<RequestHead> head = reader.next();
                if (head.isEmpty()) {
                    return;
                }
                Exchange exchange = new Exchange(channel, head.get(), hangUp);
                handler.handle(exchange);
                goesOn = exchange.streams();
                asksAgain = exchange.isAnswered() && exchange.keepsConnection();
            }
            if (!goesOn) {
                end(channel, reader);
            }
        } catch (BadRequest bad) {
            refuse(channel, reader, bad);
        } catch (IOException gone) {
            LOG.log(Level.FINE, gone, () -> "a client went");
        } finally {
            if (!goesOn) {
                hangUp.run();
            }
        }
    }

    private void refuse(SocketChannel channel, HeadReader reader, BadRequest bad) {
        RequestHead none = new RequestHead("GET", "/", "", true, Map.of());
        try {
            Exchange exchange = new Exchange(channel, none, () -> {});
            exchange.set("Content-Type", "text/plain; charset=utf-8");
            exchange.answer(bad.status(), (bad.getMessage() + "\n").getBytes(StandardCharsets.UTF_8));
            end(channel, reader);
        } catch (IOException gone) {
            LOG.log(Level.FINE, gone, () -> "a client went");
        }
    }

    /** Closing under words that were not read would take the answer back from the client (RFC 9112, 9.6). */
    private static void end(SocketChannel channel, HeadReader reader) throws IOException {
        channel.shutdownOutput();
        reader.drain(DRAINED_BYTES, DRAIN_PATIENCE);
    }

    private static void closeQuietly(SocketChannel channel) {
        try {
            channel.close();
        } catch (IOException alreadyGone) {
            LOG.log(Level.FINE, alreadyGone, () -> "a connection was gone");
        }
    }

    /** Takes no more connections and ends all that are open; what is being worked out is worked out for nobody. */
    @Override
    public void close() {
        try {
            door.close();
        } catch (IOException failure) {
            LOG.log(Level.FINE, failure, () -> "the port was closed already");
        }
        open.forEach(HttpPort::closeQuietly);
        threads.shutdown();
    }
}
