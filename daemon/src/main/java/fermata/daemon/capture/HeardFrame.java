package fermata.daemon.capture;

import java.util.Arrays;
import java.util.Locale;

/**
 * The bytes of one notification or one read, exactly as the radio said them.
 *
 * @param connection serial number of the connection within the capture, from 1
 * @param ordinal place among everything that happened on that connection
 * @param characteristicUuid 128-bit UUID of the characteristic, lower case
 * @param arrivalNanos when it reached this process, on the capture's monotonic clock
 * @param bytes the payload; copied on the way in and on the way out
 */
public record HeardFrame(long connection, long ordinal, String characteristicUuid, long arrivalNanos, byte[] bytes)
        implements CapturedItem {
    public HeardFrame {
        CapturedItem.checkPlace(connection, ordinal);
        characteristicUuid = characteristicUuid.toLowerCase(Locale.ROOT);
        bytes = bytes.clone();
    }

    @Override
    public byte[] bytes() {
        return bytes.clone();
    }

    @Override
    public long atNanos() {
        return arrivalNanos;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HeardFrame frame
                && connection == frame.connection
                && ordinal == frame.ordinal
                && arrivalNanos == frame.arrivalNanos
                && characteristicUuid.equals(frame.characteristicUuid)
                && Arrays.equals(bytes, frame.bytes);
    }

    @Override
    public int hashCode() {
        return Long.hashCode(connection) * 31 + Long.hashCode(ordinal);
    }

    @Override
    public String toString() {
        return "frame " + connection + "." + ordinal + " of " + characteristicUuid + " at " + arrivalNanos + " ns, "
                + bytes.length + " bytes";
    }

    @Override
    public <E extends Exception> void visit(Visitor<E> visitor) throws E {
        visitor.frame(this);
    }
}
