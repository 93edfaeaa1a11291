package fermata.daemon.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Between the socket and the {@link Routes} and {@link Actions}: lets only those through whom the {@link Gate} knows,
 * only to this machine's own name, and gives every answer its safety headers, its tag and its compression. Thread-safe.
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

    /** A body that was promised is waited for before a connection is used again; nothing here has one. */
    private static final Duration BODY_LIMIT = Duration.ofSeconds(2);

    private final Gate gate;
    private final Routes routes;
    private final Actions actions;
    private final LiveStreams streams;
    private final WriteWatch watch;

    GuardedHandler(Gate gate, Routes routes, Actions actions, LiveStreams streams, WriteWatch watch) {
        this.gate = gate;
        this.routes = routes;
        this.actions = actions;
        this.streams = streams;
        this.watch = watch;
    }

    @Override
    public void handle(HttpExchange exchange) throws IOException {
        Visitor visitor = gate.visitor(exchange);
        Answer answer;
        if (visitor.addressed() && isStream(exchange) && gate.mayRead(visitor)) {
            setSafetyHeaders(exchange.getResponseHeaders());
            if (streams.open(exchange, () -> gate.mayRead(visitor))) {
                return;
            }
            answer = Answer.error(503, "too many pages are open at once: close some");
        } else {
            answer = answer(exchange, visitor);
        }
        watch.within(hasBody(exchange.getRequestHeaders()) ? BODY_LIMIT : ANSWER_LIMIT, () -> {
            try (exchange) {
                send(exchange, answer);
            }
        });
    }

    private static boolean isStream(HttpExchange exchange) {
        return exchange.getRequestMethod().equals("GET") && path(exchange).equals("/api/live");
    }

    private Answer answer(HttpExchange exchange, Visitor visitor) {
        if (!visitor.addressed()) {
            // A page of the outside world whose name was bent to point here would send its own name.
            return Answer.error(421, "this server answers to its own names and addresses only");
        }
        try {
            if (exchange.getRequestMethod().equals("POST") && Actions.has(path(exchange))) {
                return changed(exchange, visitor);
            }
            if (!isRead(exchange)) {
                exchange.getResponseHeaders().set("Allow", "GET, HEAD");
                return Answer.error(405, "only GET and HEAD: here the pages read, they do not write");
            }
            return read(exchange, visitor);
        } catch (RuntimeException failure) {
            LOG.log(Level.WARNING, failure, () -> "cannot answer " + exchange.getRequestURI());
            return Answer.error(
                    500,
                    "cannot read the practice: "
                            + Optional.ofNullable(failure.getMessage()).orElse("" + failure));
        }
    }

    private Answer read(HttpExchange exchange, Visitor visitor) {
        String path = path(exchange);
        if (path.equals("/api/session")) {
            return gate.session(visitor);
        }
        if (!gate.mayRead(visitor)) {
            return routes.strangersAnswer(path);
        }
        return routes.answer(
                path,
                Optional.ofNullable(exchange.getRequestURI().getRawQuery()).orElse(""));
    }

    private Answer changed(HttpExchange exchange, Visitor visitor) {
        Headers headers = exchange.getRequestHeaders();
        if (hasBody(headers)) {
            return Answer.error(413, "a request has no body here");
        }
        if (!gate.isOfOwnPage(visitor, headers)) {
            return Answer.error(403, "this was not asked by a page of this server; load the page again");
        }
        if (!gate.mayRead(visitor) && !Actions.isForStrangers(path(exchange))) {
            return Routes.notPaired();
        }
        Actions.Outcome outcome = actions.act(
                path(exchange),
                Optional.ofNullable(headers.getFirst("User-Agent")).orElse("a browser without a name"),
                Optional.ofNullable(headers.getFirst("X-Fermata-Attempt")).orElse(""));
        // A year; whoever wants it shorter revokes it. There is no TLS here, so it cannot be marked Secure.
        outcome.token()
                .ifPresent(token -> exchange.getResponseHeaders()
                        .set(
                                "Set-Cookie",
                                Visitor.COOKIE + "=" + token
                                        + "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict"));
        return outcome.answer();
    }

    private static boolean hasBody(Headers headers) {
        String length = Optional.ofNullable(headers.getFirst("Content-Length")).orElse("0");
        return !length.equals("0") || headers.containsKey("Transfer-Encoding");
    }

    private static String path(HttpExchange exchange) {
        return Optional.ofNullable(exchange.getRequestURI().getPath()).orElse("");
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
        Routes.firstQuestion(path(exchange)).ifPresent(address -> headers.set("Link", preload(address)));
        if (path(exchange).startsWith("/kept/")) {
            // Its script stands in it, so it works as a file and not as a page of this server.
            headers.set("Content-Disposition", "attachment");
        }
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

    /** Tells the browser what the page will ask for, while the page is still on its way. */
    private static String preload(String address) {
        return "<" + address + ">; rel=preload; as=fetch; crossorigin";
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
