package fermata.decoder.stream;

import java.util.Arrays;
import java.util.Objects;
import java.util.UUID;

/**
 * One value as the radio handed it over.
 *
 * @param connection number of the connection it came on; rises with every connect, else the same
 * @param characteristic whose value it is
 * @param arrivalNanos board's monotonic clock when it arrived; never falls from frame to frame
 * @param bytes the value, copied both ways
 */
public record RawFrame(int connection, UUID characteristic, long arrivalNanos, byte[] bytes) {
    public RawFrame {
        Objects.requireNonNull(characteristic, "characteristic");
        bytes = bytes.clone();
    }

    @Override
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Arrival in microseconds, rounded down. */
    public long arrivalMicros() {
        return Math.floorDiv(arrivalNanos, 1000L);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RawFrame that
                && connection == that.connection
                && arrivalNanos == that.arrivalNanos
                && characteristic.equals(that.characteristic)
                && Arrays.equals(bytes, that.bytes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(connection, characteristic, arrivalNanos, Arrays.hashCode(bytes));
    }
}
