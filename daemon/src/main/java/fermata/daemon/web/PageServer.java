package fermata.daemon.web;

import fermata.daemon.http.HttpPort;
import fermata.daemon.http.Limits;
import fermata.daemon.json.PracticeReader;
import fermata.daemon.live.LiveFeed;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Objects;

/**
 * Serves the pages on this machine's loopback address, or to paired browsers on the network too: see {@link Audience}.
 *
 * <p>Memory: the page files (under 200 KB), and for each client what it has yet to take. A client that stalls is cut
 * off after seconds of sending or half a minute of receiving ({@link HttpPort}). Thread-safe.
 */
public final class PageServer implements AutoCloseable {
    /** Where the pages are unless told otherwise. */
    public static final int DEFAULT_PORT = 8737;

    /**
     * A browser opens six connections to a server; a family's laptop with several of them open stays far below. Who has
     * more is not one of ours, and what others have is theirs.
     */
    static final Limits NETWORK = new Limits(32, 128);

    /** This machine's own clients, tests and scripts among them, have places that the network cannot take. */
    static final Limits HERE = new Limits(128, 192);

    private final LiveStreams streams;
    private final HttpPort port;

    private PageServer(PracticeReader practice, LiveFeed live, Audience reach, int wanted) throws IOException {
        streams = new LiveStreams(live);
        Routes routes = new Routes(new SiteFiles(), practice, live::isListening);
        Actions actions = new Actions(live, reach.pairing());
        GuardedHandler handler = new GuardedHandler(new Gate(reach), routes, actions, streams);
        port = new HttpPort(address(reach, wanted), NETWORK, HERE, handler);
    }

    private static InetSocketAddress address(Audience reach, int port) throws IOException {
        return reach.pairing().isPresent()
                ? new InetSocketAddress(port)
                : new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port);
    }

    /**
     * Starts to serve what was practised.
     *
     * @param port the TCP port on 127.0.0.1, or 0 for any free one
     * @throws PageServerException if the port is taken or not allowed; the message says what to do
     */
    public static PageServer start(PracticeReader practice, int port) {
        return start(practice, LiveFeed.silent(), Audience.thisMachine(), port);
    }

    /**
     * Starts to serve what was practised and what happens now.
     *
     * @param reach who can reach the pages
     * @param port as above
     * @throws PageServerException as above
     */
    public static PageServer start(PracticeReader practice, LiveFeed live, Audience reach, int port) {
        Objects.requireNonNull(practice, "practice");
        Objects.requireNonNull(live, "live");
        if (port < 0 || port > 65535) {
            throw new PageServerException("port " + port + " is not in 0..65535", null);
        }
        try {
            return new PageServer(practice, live, reach, port);
        } catch (BindException taken) {
            throw new PageServerException(
                    "cannot serve the pages on port " + port + ": " + taken.getMessage()
                            + ". Another program has the port, perhaps another fermata: stop it or choose another port",
                    taken);
        } catch (IOException failure) {
            throw new PageServerException(
                    "cannot serve the pages on port " + port + ": " + failure.getMessage(), failure);
        }
    }

    /** The port that is served. */
    public int port() {
        return port.port();
    }

    /** The address to open in a browser. */
    public String url() {
        return "http://127.0.0.1:" + port();
    }

    /** Stops serving. */
    @Override
    public void close() {
        streams.close();
        port.close();
    }
}
