package fermata.daemon.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Between the socket and the {@link Routes}: lets only reading through, only to a page addressed by this machine's own
 * name, and gives every answer its safety headers, its tag and its compression. Thread-safe.
 */
final class GuardedHandler implements HttpHandler {
    /**
     * Everything comes from this server; nothing else may be fetched, frame a page, be posted to or move its addresses.
     */
    static final String CONTENT_SECURITY_POLICY =
            "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'";

    private static final Logger LOG = Logger.getLogger(GuardedHandler.class.getName());

    /** Longest that a client may take to take an answer. */
    private static final Duration ANSWER_LIMIT = Duration.ofSeconds(30);

    private final Set<String> hosts;
    private final Routes routes;
    private final LiveStreams streams;
    private final WriteWatch watch;

    GuardedHandler(Set<String> hosts, Routes routes, LiveStreams streams, WriteWatch watch) {
        this.hosts = hosts;
        this.routes = routes;
        this.streams = streams;
        this.watch = watch;
    }

    @Override
    public void handle(HttpExchange exchange) throws IOException {
        Optional<Answer> refusal = refusal(exchange);
        if (refusal.isEmpty() && isStream(exchange)) {
            setSafetyHeaders(exchange.getResponseHeaders());
            if (streams.open(exchange)) {
                return;
            }
            refusal = Optional.of(Answer.error(503, "too many pages are open at once: close some"));
        }
        Answer answer = refusal.orElseGet(() -> answer(exchange));
        watch.within(ANSWER_LIMIT, () -> {
            try (exchange) {
                send(exchange, answer);
            }
        });
    }

    private static boolean isStream(HttpExchange exchange) {
        return exchange.getRequestMethod().equals("GET")
                && exchange.getRequestURI().getPath().equals("/api/live");
    }

    private Optional<Answer> refusal(HttpExchange exchange) {
        String host = Optional.ofNullable(exchange.getRequestHeaders().getFirst("Host"))
                .orElse("");
        if (!hosts.contains(host.toLowerCase(Locale.ROOT))) {
            // A page of the outside world whose name was bent to point here would send its own name.
            return Optional.of(Answer.error(421, "this server answers to " + String.join(", ", hosts) + " only"));
        }
        if (!isRead(exchange)) {
            exchange.getResponseHeaders().set("Allow", "GET, HEAD");
            return Optional.of(Answer.error(405, "only GET and HEAD: the pages read, they do not write"));
        }
        return Optional.empty();
    }

    private Answer answer(HttpExchange exchange) {
        try {
            String query =
                    Optional.ofNullable(exchange.getRequestURI().getRawQuery()).orElse("");
            String path =
                    Optional.ofNullable(exchange.getRequestURI().getPath()).orElse("");
            return routes.answer(path, query);
        } catch (RuntimeException failure) {
            LOG.log(Level.WARNING, failure, () -> "cannot answer " + exchange.getRequestURI());
            return Answer.error(
                    500,
                    "cannot read the practice: "
                            + Optional.ofNullable(failure.getMessage()).orElse("" + failure));
        }
    }

    private static boolean isRead(HttpExchange exchange) {
        return exchange.getRequestMethod().equals("GET") || isHead(exchange);
    }

    private static boolean isHead(HttpExchange exchange) {
        return exchange.getRequestMethod().equals("HEAD");
    }

    private static void send(HttpExchange exchange, Answer answer) throws IOException {
        Headers headers = exchange.getResponseHeaders();
        setSafetyHeaders(headers);
        headers.set("Vary", "Accept-Encoding");
        // Ask again each time, by tag: a new version must show at once, and asking costs a millisecond here.
        headers.set("Cache-Control", answer.status() == 200 ? "no-cache" : "no-store");
        headers.set("ETag", answer.tag());
        if (answer.status() == 200 && isKnown(exchange.getRequestHeaders(), answer.tag())) {
            exchange.sendResponseHeaders(304, -1);
            return;
        }
        headers.set("Content-Type", answer.contentType());
        boolean compress = answer.isCompressed() && acceptsGzip(exchange.getRequestHeaders());
        byte[] body = compress ? answer.gzipped() : answer.body();
        if (compress) {
            headers.set("Content-Encoding", "gzip");
        }
        if (isHead(exchange)) {
            headers.set("Content-Length", Integer.toString(body.length));
            exchange.sendResponseHeaders(answer.status(), -1);
            return;
        }
        exchange.sendResponseHeaders(answer.status(), body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
    }

    private static void setSafetyHeaders(Headers headers) {
        headers.set("Content-Security-Policy", CONTENT_SECURITY_POLICY);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
    }

    private static boolean isKnown(Headers request, String tag) {
        String known = Optional.ofNullable(request.getFirst("If-None-Match")).orElse("");
        return known.contains(tag);
    }

    private static boolean acceptsGzip(Headers request) {
        return Optional.ofNullable(request.getFirst("Accept-Encoding"))
                .orElse("")
                .contains("gzip");
    }
}
