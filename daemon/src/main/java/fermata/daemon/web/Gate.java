package fermata.daemon.web;

import fermata.daemon.json.Json;
import fermata.daemon.pairing.Secrets;
import io.undertow.server.HttpServerExchange;

/**
 * Decides who may read and who may change something. Browsers on this machine may; others when they show the token of a
 * pairing that stands. A change must come from a page of this server: it names the token that only such a page can
 * read. Thread-safe.
 */
final class Gate {
    private static final String TOKEN_HEADER = "X-Fermata-Token";

    private final Audience reach;
    private final String serverSecret = Secrets.token();

    Gate(Audience reach) {
        this.reach = reach;
    }

    Visitor visitor(HttpServerExchange exchange) {
        return Visitor.of(exchange, reach.names());
    }

    boolean mayRead(Visitor visitor) {
        return visitor.atThisMachine()
                || reach.pairing().isPresent()
                        && visitor.cookie().isPresent()
                        && reach.pairing()
                                .get()
                                .browsers()
                                .isPaired(visitor.cookie().get());
    }

    /** Whether the request was made by a page of this server. */
    boolean isOfOwnPage(Visitor visitor, HttpServerExchange exchange) {
        String origin = Visitor.field(exchange, "Origin").orElse("");
        String token = Visitor.field(exchange, TOKEN_HEADER).orElse("");
        return (origin.isEmpty() || origin.equals("http://" + visitor.host()))
                && Secrets.same(token, visitor.formToken(serverSecret));
    }

    /** What a page needs to know of itself before it may change something. */
    Answer session(Visitor visitor) {
        return Answer.json(Json.write(
                Json.object().put("token", visitor.formToken(serverSecret)).put("may_read", mayRead(visitor))));
    }
}
