package fermata.daemon.web;

import com.sun.net.httpserver.HttpServer;
import fermata.daemon.live.LiveFeed;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Objects;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Serves the pages on this machine's loopback address, or to paired browsers on the network too: see {@link Reach}.
 *
 * <p>Memory: the page files (under 200 KB) and {@value #THREADS} threads. A client that stalls is cut off after
 * {@value #REQUEST_SECONDS} seconds of sending or {@link WriteWatch half a minute} of receiving. Thread-safe.
 */
public final class PageServer implements AutoCloseable {
    /** Where the pages are unless told otherwise. */
    public static final int DEFAULT_PORT = 8737;

    /**
     * How many requests are read and answered at once; further ones wait. A browser opens six connections, and whoever
     * sends half a request holds one of these for {@value #REQUEST_SECONDS} seconds.
     */
    public static final int THREADS = 16;

    private static final int WAITING_REQUESTS = 64;
    private static final String REQUEST_SECONDS = "5";
    private static final String ANSWER_SECONDS = "1200";

    private final HttpServer server;
    private final ThreadPoolExecutor pool;
    private final WriteWatch watch = new WriteWatch();
    private final LiveStreams streams;

    private PageServer(
            HttpServer server, ThreadPoolExecutor pool, PracticeReader practice, LiveFeed live, Reach reach) {
        this.server = server;
        this.pool = pool;
        streams = new LiveStreams(live, watch);
        Routes routes = new Routes(new SiteFiles(), practice, live::isListening);
        Actions actions = new Actions(live, reach.pairing());
        server.createContext("/", new GuardedHandler(new Gate(reach, port()), routes, actions, streams, watch));
        server.start();
    }

    /**
     * Starts to serve what was practised.
     *
     * @param port the TCP port on 127.0.0.1, or 0 for any free one
     * @throws PageServerException if the port is taken or not allowed; the message says what to do
     */
    public static PageServer start(PracticeReader practice, int port) {
        return start(practice, LiveFeed.silent(), Reach.thisMachine(), port);
    }

    /**
     * Starts to serve what was practised and what happens now.
     *
     * @param reach who can reach the pages
     * @param port as above
     * @throws PageServerException as above
     */
    public static PageServer start(PracticeReader practice, LiveFeed live, Reach reach, int port) {
        Objects.requireNonNull(practice, "practice");
        Objects.requireNonNull(live, "live");
        limitStalledClients();
        HttpServer server = bind(reach, port);
        ThreadPoolExecutor pool = boundedPool();
        server.setExecutor(pool);
        return new PageServer(server, pool, practice, live, reach);
    }

    /** The port that is served. */
    public int port() {
        return server.getAddress().getPort();
    }

    /** The address to open in a browser. */
    public String url() {
        return "http://127.0.0.1:" + port();
    }

    /** Stops serving; requests under way get a second to end. */
    @Override
    public void close() {
        streams.close();
        server.stop(pool.getActiveCount() == 0 ? 0 : 1);
        pool.shutdownNow();
        watch.close();
    }

    private static HttpServer bind(Reach reach, int port) {
        if (port < 0 || port > 65535) {
            throw new PageServerException("port " + port + " is not in 0..65535", null);
        }
        try {
            return HttpServer.create(
                    reach.pairing().isPresent()
                            ? new InetSocketAddress(port)
                            : new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port),
                    0);
        } catch (BindException taken) {
            throw new PageServerException(
                    "cannot serve the pages on 127.0.0.1:" + port + ": " + taken.getMessage()
                            + ". Another program has the port, perhaps another fermata: stop it or choose another port",
                    taken);
        } catch (IOException failure) {
            throw new PageServerException(
                    "cannot serve the pages on 127.0.0.1:" + port + ": " + failure.getMessage(), failure);
        }
    }

    private static ThreadPoolExecutor boundedPool() {
        AtomicInteger number = new AtomicInteger();
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                THREADS,
                THREADS,
                30,
                TimeUnit.SECONDS,
                new ArrayBlockingQueue<>(WAITING_REQUESTS),
                work -> {
                    Thread thread = new Thread(work, "pages-" + number.incrementAndGet());
                    thread.setDaemon(true);
                    return thread;
                },
                // When all is busy the accepting thread lends a hand and so accepts less: refusing would leak its
                // socket.
                new ThreadPoolExecutor.CallerRunsPolicy());
        pool.allowCoreThreadTimeOut(true);
        return pool;
    }

    /** The JDK's server knows these limits only as properties, read when its first instance is made. */
    private static void limitStalledClients() {
        setUnlessSet("sun.net.httpserver.maxReqTime", REQUEST_SECONDS);
        // Above the age of a live stream: what is cut off sooner is cut off by WriteWatch. But without a limit the
        // server keeps what it knows of every connection whose client hung up, for ever.
        setUnlessSet("sun.net.httpserver.maxRspTime", ANSWER_SECONDS);
    }

    private static void setUnlessSet(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }
}
