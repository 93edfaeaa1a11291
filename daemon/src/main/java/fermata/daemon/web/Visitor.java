package fermata.daemon.web;

import fermata.daemon.pairing.Secrets;
import io.undertow.server.HttpServerExchange;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Who asks, as far as the connection and the headers tell.
 *
 * @param atThisMachine whether both ends are on this machine and it was addressed as such
 * @param addressed whether it was addressed by a name or address of this machine
 * @param cookie the token that it shows; empty if none
 * @param host the Host header, lower case; empty if none
 */
record Visitor(boolean atThisMachine, boolean addressed, Optional<String> cookie, String host) {
    static final String COOKIE = "fermata";

    private static final Pattern LITERAL = Pattern.compile("[0-9.]{7,15}|\\[[0-9a-f:.]{2,45}]");

    /**
     * Looks at a request.
     *
     * @param names the host names that this machine goes by, lower case
     */
    static Visitor of(HttpServerExchange exchange, Set<String> names) {
        String host = field(exchange, "Host").orElse("").toLowerCase(Locale.ROOT);
        InetSocketAddress local = exchange.getDestinationAddress();
        boolean loopbackName = host.equals("localhost:" + local.getPort()) || isLoopback(host, local);
        boolean bothEndsHere = local.getAddress().isLoopbackAddress()
                && exchange.getSourceAddress().getAddress().isLoopbackAddress();
        boolean addressed = loopbackName ? bothEndsHere : isNamed(host, names, local) || isLiteralOf(host, local);
        return new Visitor(bothEndsHere && loopbackName, addressed, cookie(exchange), host);
    }

    private static boolean isNamed(String host, Set<String> names, InetSocketAddress local) {
        return names.stream().anyMatch(name -> host.equals(name + ":" + local.getPort()));
    }

    private static boolean isLoopback(String host, InetSocketAddress local) {
        return local.getAddress().isLoopbackAddress() && isLiteralOf(host, local);
    }

    /** Whether the Host is the very address that the connection came to: no name, so nothing that DNS could bend. */
    private static boolean isLiteralOf(String host, InetSocketAddress local) {
        String end = ":" + local.getPort();
        if (!host.endsWith(end)) {
            return false;
        }
        String address = host.substring(0, host.length() - end.length());
        if (!LITERAL.matcher(address).matches()) {
            return false;
        }
        try {
            return InetAddress.getByName(address).equals(local.getAddress());
        } catch (UnknownHostException notAnAddress) {
            return false;
        }
    }

    /** The first value of a header field. */
    static Optional<String> field(HttpServerExchange exchange, String name) {
        return Optional.ofNullable(exchange.getRequestHeaders().getFirst(name));
    }

    /** Of all that were sent: Undertow has joined them if they stood in several fields. */
    private static Optional<String> cookie(HttpServerExchange exchange) {
        return field(exchange, "Cookie").stream()
                .flatMap(header -> List.of(header.split(";")).stream())
                .map(String::strip)
                .filter(pair -> pair.startsWith(COOKIE + "="))
                .map(pair -> pair.substring(COOKIE.length() + 1))
                .filter(token -> token.matches("[0-9a-f]{64}"))
                .findFirst();
    }

    /** What a page of this visitor must send along to change anything; other sites cannot read it. */
    String formToken(String serverSecret) {
        return Secrets.hash(serverSecret + (atThisMachine ? "here" : cookie.orElse("stranger")));
    }
}
