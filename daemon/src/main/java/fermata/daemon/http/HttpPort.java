package fermata.daemon.http;

import fermata.daemon.http.Guests.Place;
import io.undertow.UndertowOptions;
import io.undertow.server.DefaultByteBufferPool;
import io.undertow.server.HttpHandler;
import io.undertow.server.HttpServerExchange;
import io.undertow.server.protocol.http.HttpOpenListener;
import io.undertow.util.StatusCodes;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.xnio.ChannelListener;
import org.xnio.ChannelListeners;
import org.xnio.IoUtils;
import org.xnio.OptionMap;
import org.xnio.Options;
import org.xnio.StreamConnection;
import org.xnio.Xnio;
import org.xnio.XnioExecutor;
import org.xnio.XnioWorker;
import org.xnio.channels.AcceptingChannel;

/**
 * Undertow behind a gate that counts connections. Two threads take connections, read heads and write; answers are
 * worked out by {@value #AT_ONCE} others at most. Whoever has too many connections, sends a head for longer than
 * {@value #HEAD_SECONDS} s, says nothing for {@value #IDLE_SECONDS} s or takes longer than {@value #ANSWER_SECONDS} s
 * to take an answer is hung up on. Thread-safe.
 */
public final class HttpPort implements AutoCloseable {
    /** The longest head: cookies of all programs on this machine may come along, since cookies know no ports. */
    static final int LONGEST_HEAD_BYTES = 16_384;

    static final int MOST_FIELDS = 100;
    static final int HEAD_SECONDS = 5;
    static final int IDLE_SECONDS = 30;
    static final int ANSWER_SECONDS = 30;

    /** So that many who ask for much do not fill a small board's memory. */
    static final int AT_ONCE = 16;

    /** So much of a body that nobody asked for is thrown away before the connection ends. */
    private static final long DRAINED_BYTES = 65_536;

    private static final int BUFFER_BYTES = 8_192;
    private static final int POOLED_BUFFERS = 64;

    private static final OptionMap READING = OptionMap.builder()
            .set(UndertowOptions.MAX_HEADER_SIZE, LONGEST_HEAD_BYTES)
            .set(UndertowOptions.MAX_HEADERS, MOST_FIELDS)
            .set(UndertowOptions.MAX_ENTITY_SIZE, DRAINED_BYTES)
            .set(UndertowOptions.REQUEST_PARSE_TIMEOUT, HEAD_SECONDS * 1000)
            .set(UndertowOptions.NO_REQUEST_TIMEOUT, IDLE_SECONDS * 1000)
            // RFC 9110, 6.6.1, wants no date of a machine that cannot know it, as a board without a network.
            .set(UndertowOptions.ALWAYS_SET_DATE, false)
            .getMap();

    private final Guests guests;
    private final HttpOpenListener http;
    private final XnioWorker worker;
    private final AcceptingChannel<StreamConnection> door;

    /**
     * Opens a port.
     *
     * @param address where; port 0 for any free one
     * @param network how many connections other machines may have
     * @param here how many this machine
     * @param handler answers with {@link #answer}, or begins a stream; may block
     * @throws IOException if the address is taken or not allowed
     */
    public HttpPort(InetSocketAddress address, Limits network, Limits here, HttpHandler handler) throws IOException {
        guests = new Guests(network, here);
        http = new HttpOpenListener(new DefaultByteBufferPool(true, BUFFER_BYTES, POOLED_BUFFERS, 1), READING);
        http.setRootHandler(exchange -> handOn(exchange, handler));
        worker = Xnio.getInstance(HttpPort.class.getClassLoader())
                .createWorker(OptionMap.builder()
                        .set(Options.WORKER_NAME, "pages")
                        .set(Options.THREAD_DAEMON, true)
                        .set(Options.WORKER_IO_THREADS, 1)
                        .set(Options.WORKER_TASK_CORE_THREADS, 1)
                        .set(Options.WORKER_TASK_MAX_THREADS, AT_ONCE)
                        .getMap());
        try {
            ChannelListener<AcceptingChannel<StreamConnection>> gate = this::welcome;
            door = worker.createStreamConnectionServer(address, gate, OptionMap.create(Options.TCP_NODELAY, true));
        } catch (IOException | RuntimeException refused) {
            worker.shutdownNow();
            throw refused;
        }
        door.resumeAccepts();
    }

    /** The TCP port. */
    public int port() {
        return door.getLocalAddress(InetSocketAddress.class).getPort();
    }

    private void welcome(AcceptingChannel<StreamConnection> open) {
        try {
            for (StreamConnection next = open.accept(); next != null; next = open.accept()) {
                admit(next);
            }
        } catch (IOException refused) {
            // This port was closed, or there is no descriptor left for now: whoever waits is announced again.
            return;
        }
    }

    private void admit(StreamConnection connection) {
        InetSocketAddress client = connection.getPeerAddress(InetSocketAddress.class);
        Optional<Place> place = client == null ? Optional.empty() : guests.enter(client.getAddress());
        if (place.isEmpty()) {
            IoUtils.safeClose(connection);
            return;
        }
        http.handleEvent(connection);
        ChannelListener<? super StreamConnection> undertows = connection.getCloseListener();
        connection.setCloseListener(closed -> {
            place.get().leave();
            ChannelListeners.invokeChannelListener(closed, undertows);
        });
        if (!connection.isOpen()) {
            place.get().leave();
        }
    }

    private static void handOn(HttpServerExchange exchange, HttpHandler handler) {
        if (hasBody(exchange)) {
            exchange.setPersistent(false);
        }
        if (exchange.isHostIncludedInRequestURI()) {
            // Proxies are asked so; the Host that is looked at here would not be the one that counts.
            exchange.setPersistent(false);
            answer(exchange, StatusCodes.BAD_REQUEST, new byte[0]);
        } else {
            exchange.dispatch(handler);
        }
    }

    /** Whether a body was promised. It is not read, and the connection ends with the answer. */
    public static boolean hasBody(HttpServerExchange exchange) {
        return !exchange.isRequestComplete();
    }

    /** Sends the whole answer; of a {@code HEAD} and of "not modified" the fields only. Waits for nobody. */
    public static void answer(HttpServerExchange exchange, int status, byte[] body) {
        answer(exchange, status, body, Duration.ofSeconds(ANSWER_SECONDS));
    }

    static void answer(HttpServerExchange exchange, int status, byte[] body, Duration patience) {
        XnioExecutor.Key end = exchange.getIoThread()
                .executeAfter(
                        () -> IoUtils.safeClose(exchange.getConnection()), patience.toMillis(), TimeUnit.MILLISECONDS);
        exchange.addExchangeCompleteListener((done, next) -> {
            end.remove();
            next.proceed();
        });
        exchange.setStatusCode(status);
        if (status == StatusCodes.NOT_MODIFIED) {
            exchange.endExchange();
        } else {
            exchange.getResponseSender().send(ByteBuffer.wrap(body));
        }
    }

    /** Takes no more connections and ends all that are open; what is being worked out is worked out for nobody. */
    @Override
    public void close() {
        if (!worker.isShutdown()) {
            IoUtils.safeClose(door);
            worker.shutdownNow();
        }
    }
}
