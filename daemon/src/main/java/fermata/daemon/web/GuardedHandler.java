package fermata.daemon.web;

import fermata.daemon.http.HttpPort;
import fermata.daemon.store.StoreException;
import io.undertow.server.HttpHandler;
import io.undertow.server.HttpServerExchange;
import io.undertow.util.HttpString;
import io.undertow.util.Methods;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Between the socket and the {@link Routes} and {@link Actions}: lets only those through whom the {@link Gate} knows,
 * only to this machine's own name, and gives every answer its safety fields, its tag and its compression. Thread-safe.
 */
final class GuardedHandler implements HttpHandler {
    /**
     * Everything comes from this server; nothing else may be fetched, frame a page, be posted to or move its addresses.
     */
    static final String CONTENT_SECURITY_POLICY =
            "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'";

    private static final Logger LOG = Logger.getLogger(GuardedHandler.class.getName());

    private static final String NOT_TOLD = "the board cannot answer; its own log says why";

    private final Gate gate;
    private final Routes routes;
    private final Actions actions;
    private final LiveStreams streams;

    GuardedHandler(Gate gate, Routes routes, Actions actions, LiveStreams streams) {
        this.gate = gate;
        this.routes = routes;
        this.actions = actions;
        this.streams = streams;
    }

    @Override
    public void handleRequest(HttpServerExchange exchange) throws Exception {
        Visitor visitor = gate.visitor(exchange);
        setSafetyFields(exchange, visitor);
        try {
            if (!visitor.addressed() || !isStream(exchange) || !gate.mayRead(visitor)) {
                send(exchange, answer(exchange, visitor));
            } else if (!streams.open(exchange, () -> gate.mayRead(visitor))) {
                send(exchange, Answer.error(503, "too many pages are open at once: close some"));
            }
        } catch (StoreException failure) {
            send(exchange, failed(exchange, visitor, failure));
        }
    }

    private static boolean isStream(HttpServerExchange exchange) {
        return exchange.getRequestMethod().equals(Methods.GET)
                && exchange.getRequestPath().equals("/api/live");
    }

    private Answer answer(HttpServerExchange exchange, Visitor visitor) {
        if (!visitor.addressed()) {
            // A page of the outside world whose name was bent to point here would send its own name.
            return Answer.error(421, "this server answers to its own names and addresses only");
        }
        try {
            if (exchange.getRequestMethod().equals(Methods.POST) && Actions.has(exchange.getRequestPath())) {
                return changed(exchange, visitor);
            }
            if (!isRead(exchange)) {
                set(exchange, "Allow", "GET, HEAD");
                return Answer.error(405, "only GET and HEAD: here the pages read, they do not write");
            }
            return read(exchange, visitor);
        } catch (RuntimeException failure) {
            return failed(exchange, visitor, failure);
        }
    }

    /** Where files lie, and what is in them, is told on this machine only. */
    private static Answer failed(HttpServerExchange exchange, Visitor visitor, RuntimeException failure) {
        if (failure instanceof StoreException store) {
            return unavailable(exchange, visitor, store);
        }
        LOG.log(Level.WARNING, failure, () -> "cannot answer " + exchange.getRequestPath());
        if (!visitor.atThisMachine()) {
            return Answer.error(500, NOT_TOLD);
        }
        return Answer.error(
                500,
                "cannot read the practice: "
                        + Optional.ofNullable(failure.getMessage()).orElse("" + failure));
    }

    /** The practice cannot be read as it is now; the same address answers again once that is mended. */
    private static Answer unavailable(HttpServerExchange exchange, Visitor visitor, StoreException failure) {
        LOG.log(Level.WARNING, () -> "cannot answer " + exchange.getRequestPath() + ": " + failure.getMessage());
        return Answer.error(503, visitor.atThisMachine() ? failure.getMessage() : NOT_TOLD);
    }

    private Answer read(HttpServerExchange exchange, Visitor visitor) {
        String path = exchange.getRequestPath();
        if (path.equals("/api/session")) {
            return gate.session(visitor);
        }
        if (!gate.mayRead(visitor)) {
            return routes.strangersAnswer(path);
        }
        return routes.answer(path, exchange.getQueryString());
    }

    private Answer changed(HttpServerExchange exchange, Visitor visitor) {
        if (HttpPort.hasBody(exchange)) {
            return Answer.error(413, "a request has no body here");
        }
        if (!gate.isOfOwnPage(visitor, exchange)) {
            return Answer.error(403, "this was not asked by a page of this server; load the page again");
        }
        if (!gate.mayRead(visitor) && !Actions.isForStrangers(exchange.getRequestPath())) {
            return Routes.notPaired();
        }
        Actions.Outcome outcome = actions.act(
                exchange.getRequestPath(),
                Visitor.field(exchange, "User-Agent").orElse("a browser without a name"),
                Visitor.field(exchange, "X-Fermata-Attempt").orElse(""));
        // A year; whoever wants it shorter revokes it. There is no TLS here, so it cannot be marked Secure.
        outcome.token()
                .ifPresent(token -> set(
                        exchange,
                        "Set-Cookie",
                        Visitor.COOKIE + "=" + token + "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict"));
        return outcome.answer();
    }

    private static boolean isRead(HttpServerExchange exchange) {
        return exchange.getRequestMethod().equals(Methods.GET)
                || exchange.getRequestMethod().equals(Methods.HEAD);
    }

    private static void set(HttpServerExchange exchange, String name, String value) {
        exchange.getResponseHeaders().put(new HttpString(name), value);
    }

    private static void send(HttpServerExchange exchange, Answer answer) {
        set(exchange, "Vary", "Accept-Encoding");
        // Ask again each time, by tag: a new version must show at once, and asking costs a millisecond here.
        set(exchange, "Cache-Control", answer.status() == 200 ? "no-cache" : "no-store");
        set(exchange, "ETag", answer.tag());
        if (answer.status() == 200 && says(exchange, "If-None-Match", answer.tag())) {
            HttpPort.answer(exchange, 304, new byte[0]);
            return;
        }
        set(exchange, "Content-Type", answer.contentType());
        Routes.firstQuestion(exchange.getRequestPath()).ifPresent(address -> set(exchange, "Link", preload(address)));
        if (exchange.getRequestPath().startsWith("/kept/")) {
            // Its script stands in it, so it works as a file and not as a page of this server.
            set(exchange, "Content-Disposition", "attachment");
        }
        boolean compress = answer.isCompressed() && says(exchange, "Accept-Encoding", "gzip");
        if (compress) {
            set(exchange, "Content-Encoding", "gzip");
        }
        HttpPort.answer(exchange, answer.status(), compress ? answer.gzipped() : answer.body());
    }

    /** Tells the browser what the page will ask for, while the page is still on its way. */
    private static String preload(String address) {
        return "<" + address + ">; rel=preload; as=fetch; crossorigin";
    }

    private static void setSafetyFields(HttpServerExchange exchange, Visitor visitor) {
        set(exchange, "Content-Security-Policy", CONTENT_SECURITY_POLICY);
        set(exchange, "X-Content-Type-Options", "nosniff");
        set(exchange, "Referrer-Policy", "no-referrer");
        set(exchange, "Cross-Origin-Resource-Policy", "same-origin");
        if (visitor.atThisMachine()) {
            // Elsewhere there is no TLS, and browsers complain of a policy that they cannot keep without it.
            set(exchange, "Cross-Origin-Opener-Policy", "same-origin");
        }
    }

    private static boolean says(HttpServerExchange exchange, String field, String word) {
        return Visitor.field(exchange, field).orElse("").contains(word);
    }
}
