package fermata.daemon.web;

import fermata.daemon.http.Exchange;
import fermata.daemon.http.HttpPort;
import fermata.daemon.http.RequestHead;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Between the socket and the {@link Routes} and {@link Actions}: lets only those through whom the {@link Gate} knows,
 * only to this machine's own name, and gives every answer its safety fields, its tag and its compression. Thread-safe.
 */
final class GuardedHandler implements HttpPort.Handler {
    /**
     * Everything comes from this server; nothing else may be fetched, frame a page, be posted to or move its addresses.
     */
    static final String CONTENT_SECURITY_POLICY =
            "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'";

    private static final Logger LOG = Logger.getLogger(GuardedHandler.class.getName());

    /** Longest that a client may take to take an answer. */
    private static final Duration ANSWER_LIMIT = Duration.ofSeconds(30);

    /** How many answers are worked out at once, so that many who ask for much do not fill a small board's memory. */
    private static final int AT_ONCE = 16;

    private final Gate gate;
    private final Routes routes;
    private final Actions actions;
    private final LiveStreams streams;
    private final WriteWatch watch;
    private final Semaphore turnstile = new Semaphore(AT_ONCE);

    GuardedHandler(Gate gate, Routes routes, Actions actions, LiveStreams streams, WriteWatch watch) {
        this.gate = gate;
        this.routes = routes;
        this.actions = actions;
        this.streams = streams;
        this.watch = watch;
    }

    @Override
    public void handle(Exchange exchange) throws IOException {
        Visitor visitor = gate.visitor(exchange);
        Answer answer;
        if (visitor.addressed() && isStream(exchange) && gate.mayRead(visitor)) {
            setSafetyFields(exchange, visitor);
            if (streams.open(exchange, () -> gate.mayRead(visitor))) {
                return;
            }
            answer = Answer.error(503, "too many pages are open at once: close some");
        } else {
            turnstile.acquireUninterruptibly();
            try {
                answer = answer(exchange, visitor);
            } finally {
                turnstile.release();
            }
        }
        watch.within(ANSWER_LIMIT, () -> send(exchange, visitor, answer));
    }

    private static boolean isStream(Exchange exchange) {
        return exchange.request().method().equals("GET") && path(exchange).equals("/api/live");
    }

    private Answer answer(Exchange exchange, Visitor visitor) {
        if (!visitor.addressed()) {
            // A page of the outside world whose name was bent to point here would send its own name.
            return Answer.error(421, "this server answers to its own names and addresses only");
        }
        try {
            if (exchange.request().method().equals("POST") && Actions.has(path(exchange))) {
                return changed(exchange, visitor);
            }
            if (!isRead(exchange)) {
                exchange.set("Allow", "GET, HEAD");
                return Answer.error(405, "only GET and HEAD: here the pages read, they do not write");
            }
            return read(exchange, visitor);
        } catch (RuntimeException failure) {
            LOG.log(
                    Level.WARNING,
                    failure,
                    () -> "cannot answer " + exchange.request().path());
            return Answer.error(
                    500,
                    "cannot read the practice: "
                            + Optional.ofNullable(failure.getMessage()).orElse("" + failure));
        }
    }

    private Answer read(Exchange exchange, Visitor visitor) {
        String path = path(exchange);
        if (path.equals("/api/session")) {
            return gate.session(visitor);
        }
        if (!gate.mayRead(visitor)) {
            return routes.strangersAnswer(path);
        }
        return routes.answer(path, exchange.request().query());
    }

    private Answer changed(Exchange exchange, Visitor visitor) {
        RequestHead request = exchange.request();
        if (request.hasBody()) {
            return Answer.error(413, "a request has no body here");
        }
        if (!gate.isOfOwnPage(visitor, request)) {
            return Answer.error(403, "this was not asked by a page of this server; load the page again");
        }
        if (!gate.mayRead(visitor) && !Actions.isForStrangers(path(exchange))) {
            return Routes.notPaired();
        }
        Actions.Outcome outcome = actions.act(
                path(exchange),
                request.field("User-Agent").orElse("a browser without a name"),
                request.field("X-Fermata-Attempt").orElse(""));
        // A year; whoever wants it shorter revokes it. There is no TLS here, so it cannot be marked Secure.
        outcome.token()
                .ifPresent(token -> exchange.set(
                        "Set-Cookie",
                        Visitor.COOKIE + "=" + token + "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict"));
        return outcome.answer();
    }

    private static String path(Exchange exchange) {
        return exchange.request().path();
    }

    private static boolean isRead(Exchange exchange) {
        return exchange.request().method().equals("GET")
                || exchange.request().method().equals("HEAD");
    }

    private static void send(Exchange exchange, Visitor visitor, Answer answer) throws IOException {
        setSafetyFields(exchange, visitor);
        exchange.set("Vary", "Accept-Encoding");
        // Ask again each time, by tag: a new version must show at once, and asking costs a millisecond here.
        exchange.set("Cache-Control", answer.status() == 200 ? "no-cache" : "no-store");
        exchange.set("ETag", answer.tag());
        if (answer.status() == 200 && says(exchange, "If-None-Match", answer.tag())) {
            exchange.answer(304, new byte[0]);
            return;
        }
        exchange.set("Content-Type", answer.contentType());
        Routes.firstQuestion(path(exchange)).ifPresent(address -> exchange.set("Link", preload(address)));
        if (path(exchange).startsWith("/kept/")) {
            // Its script stands in it, so it works as a file and not as a page of this server.
            exchange.set("Content-Disposition", "attachment");
        }
        boolean compress = answer.isCompressed() && says(exchange, "Accept-Encoding", "gzip");
        if (compress) {
            exchange.set("Content-Encoding", "gzip");
        }
        exchange.answer(answer.status(), compress ? answer.gzipped() : answer.body());
    }

    /** Tells the browser what the page will ask for, while the page is still on its way. */
    private static String preload(String address) {
        return "<" + address + ">; rel=preload; as=fetch; crossorigin";
    }

    private static void setSafetyFields(Exchange exchange, Visitor visitor) {
        exchange.set("Content-Security-Policy", CONTENT_SECURITY_POLICY);
        exchange.set("X-Content-Type-Options", "nosniff");
        exchange.set("Referrer-Policy", "no-referrer");
        exchange.set("Cross-Origin-Resource-Policy", "same-origin");
        if (visitor.atThisMachine()) {
            // Elsewhere there is no TLS, and browsers complain of a policy that they cannot keep without it.
            exchange.set("Cross-Origin-Opener-Policy", "same-origin");
        }
    }

    private static boolean says(Exchange exchange, String field, String word) {
        return exchange.request().field(field).orElse("").contains(word);
    }
}
