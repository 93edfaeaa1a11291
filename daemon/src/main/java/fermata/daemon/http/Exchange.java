package fermata.daemon.http;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One request and its answer. Writing blocks while the client does not take it; an interrupt ends that and the
 * connection (java.nio.channels.InterruptibleChannel). Not thread-safe, but may be handed from thread to thread.
 */
public final class Exchange implements AutoCloseable {
    private static final int NOT_MODIFIED = 304;

    private final SocketChannel channel;
    private final RequestHead request;
    private final Runnable hangUp;
    private final Map<String, String> fields = new LinkedHashMap<>();
    private boolean answered;
    private boolean streams;

    Exchange(SocketChannel channel, RequestHead request, Runnable hangUp) {
        this.channel = channel;
        this.request = request;
        this.hangUp = hangUp;
    }

    /** What is asked. */
    public RequestHead request() {
        return request;
    }

    /** This end of the connection. */
    public InetSocketAddress local() throws IOException {
        return (InetSocketAddress) channel.getLocalAddress();
    }

    /** The client's end. */
    public InetSocketAddress remote() throws IOException {
        return (InetSocketAddress) channel.getRemoteAddress();
    }

    /** Sets a header field of the answer. */
    public void set(String name, String value) {
        if (value.chars().anyMatch(letter -> letter < ' ' || letter > '~')) {
            throw new IllegalArgumentException("the header field " + name + " must be printable ASCII");
        }
        fields.put(name, value);
    }

    /**
     * Sends the whole answer; of a {@code HEAD} and of "not modified" the fields only.
     *
     * @throws IOException if the client went
     */
    public void answer(int status, byte[] body) throws IOException {
        begin();
        if (status != NOT_MODIFIED) {
            set("Content-Length", Integer.toString(body.length));
        }
        set("Connection", keepsConnection() ? "keep-alive" : "close");
        boolean sendsBody = status != NOT_MODIFIED && !request.method().equals("HEAD");
        write(ByteBuffer.wrap(head(status)), ByteBuffer.wrap(sendsBody ? body : new byte[0]));
    }

    /**
     * Begins an answer without an end: from now on the connection belongs to whoever closes this exchange.
     *
     * @throws IOException if the client went
     */
    public OutputStream stream(int status) throws IOException {
        begin();
        streams = true;
        set("Connection", "close");
        write(ByteBuffer.wrap(head(status)));
        return Channels.newOutputStream(channel);
    }

    private void begin() {
        if (answered) {
            throw new IllegalStateException("a request is answered once");
        }
        answered = true;
    }

    /** Without a date: RFC 9110, 6.6.1, wants none of a machine that cannot know it, as a board without a network. */
    private byte[] head(int status) {
        StringBuilder head = new StringBuilder("HTTP/1.1 " + status + " " + reason(status) + "\r\n");
        fields.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        return head.append("\r\n").toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** Only for people who look at it; RFC 9112 lets it be empty. */
    private static String reason(int status) {
        return switch (status) {
            case 200 -> "OK";
            case 304 -> "Not Modified";
            case 404 -> "Not Found";
            default -> status < 400 ? "" : status < 500 ? "Refused" : "Failed";
        };
    }

    private void write(ByteBuffer... parts) throws IOException {
        while (parts[parts.length - 1].hasRemaining() || parts[0].hasRemaining()) {
            channel.write(parts);
        }
    }

    boolean isAnswered() {
        return answered;
    }

    boolean streams() {
        return streams;
    }

    /** Whether the client may ask again. A body is not read, so what follows it could not be told from it. */
    boolean keepsConnection() {
        return !streams && request.keepsConnection() && !request.hasBody();
    }

    /** Hangs up. */
    @Override
    public void close() {
        hangUp.run();
    }
}
