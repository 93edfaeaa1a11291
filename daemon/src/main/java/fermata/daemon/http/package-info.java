/**
 * A port for HTTP: requests without bodies, from few clients who need not be trusted.
 *
 * <p>{@link fermata.daemon.http.HttpPort} is Undertow with the limits that a board needs, behind a gate that lets in as
 * many connections as {@link fermata.daemon.http.Limits} allow one address and all, and hands each request to an
 * Undertow handler. Lengths are bytes.
 *
 * <p>Source: RFC 9110 and RFC 9112, as Undertow reads them.
 */
package fermata.daemon.http;
