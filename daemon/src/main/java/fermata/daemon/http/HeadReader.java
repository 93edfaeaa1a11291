package fermata.daemon.http;

import fermata.daemon.time.MonotonicClock;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Reads one head after the other from a connection; what came too early stays for the next. Not thread-safe. */
final class HeadReader {
    /** The longest head: cookies of all programs on this machine may come along, since cookies know no ports. */
    static final int LONGEST_BYTES = 16_384;

    private static final int FIRST_BYTES = 2_048;
    private static final byte[] END = {'\r', '\n', '\r', '\n'};

    private final MonotonicClock clock = MonotonicClock.system();
    private final Socket socket;
    private final Duration betweenRequests;
    private final Duration forOne;
    private byte[] bytes = new byte[FIRST_BYTES];
    private int count;

    /**
     * A reader of a connection in blocking mode.
     *
     * @param betweenRequests so long may a connection say nothing
     * @param forOne so long may a head take from its first byte
     */
    HeadReader(SocketChannel channel, Duration betweenRequests, Duration forOne) {
        this.socket = channel.socket();
        this.betweenRequests = betweenRequests;
        this.forOne = forOne;
    }

    /** The next head; empty if the client hung up or has nothing to ask. */
    Optional<RequestHead> next() throws IOException, BadRequest {
        long deadline = clock.nanos() + (count > 0 ? forOne : betweenRequests).toNanos();
        while (true) {
            skipEmptyLines();
            int end = end();
            if (end >= 0) {
                String head = new String(bytes, 0, end, StandardCharsets.ISO_8859_1);
                drop(end + END.length);
                return Optional.of(RequestHead.parse(head));
            }
            if (count >= LONGEST_BYTES) {
                throw new BadRequest(431, "a request's head has at most " + LONGEST_BYTES + " bytes");
            }
            boolean begins = count == 0;
            if (!fill(deadline)) {
                return Optional.empty();
            }
            deadline = begins ? clock.nanos() + forOne.toNanos() : deadline;
        }
    }

    /** Reads on and throws away, to let a client read its answer before the connection ends under its own words. */
    void drain(int most, Duration patience) throws IOException {
        long deadline = clock.nanos() + patience.toNanos();
        int drained = 0;
        count = 0;
        while (drained < most && fill(deadline)) {
            drained += count;
            count = 0;
        }
    }

    private boolean fill(long deadlineNanos) throws IOException {
        long millis = TimeUnit.NANOSECONDS.toMillis(deadlineNanos - clock.nanos());
        if (millis <= 0) {
            return false;
        }
        if (count == bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.min(LONGEST_BYTES, 2 * bytes.length));
        }
        try {
            socket.setSoTimeout((int) millis);
            int came = socket.getInputStream().read(bytes, count, bytes.length - count);
            count += Math.max(0, came);
            return came >= 0;
        } catch (SocketTimeoutException silent) {
            return false;
        }
    }

    /** Robustness after RFC 9112, 2.2: an empty line before a request is passed over. */
    private void skipEmptyLines() {
        while (count >= 2 && bytes[0] == '\r' && bytes[1] == '\n') {
            drop(2);
        }
    }

    private int end() {
        for (int at = 0; at + END.length <= count; at++) {
            if (Arrays.equals(bytes, at, at + END.length, END, 0, END.length)) {
                return at;
            }
        }
        return -1;
    }

    private void drop(int length) {
        System.arraycopy(bytes, length, bytes, 0, count - length);
        count -= length;
    }
}
