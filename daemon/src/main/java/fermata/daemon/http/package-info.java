/**
 * A small port for HTTP: requests without bodies, from few clients who need not be trusted.
 *
 * <p>{@link fermata.daemon.http.HttpPort} takes connections, as many as {@link fermata.daemon.http.Limits} allow one
 * address and all, reads a {@link fermata.daemon.http.RequestHead} from each within seconds, and gives an
 * {@link fermata.daemon.http.Exchange} to whoever answers. Lengths are bytes.
 *
 * <p>Source: RFC 9110 and RFC 9112, of which it does what browsers ask of a board: {@code GET}, {@code HEAD} and
 * {@code POST} in origin form, connections that are used again, answers of known length, and streams that end with
 * their connection.
 */
package fermata.daemon.http;
