package fermata.daemon.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32C;

/**
 * The checksum that a row carries: CRC-32C of its values, each with its kind and length, so that a byte that the disk
 * altered is noticed. Not against malice. One use; not thread-safe.
 */
final class RowSum {
    private final CRC32C crc = new CRC32C();

    private RowSum() {}

    /** The checksum of these values: whole numbers, text, bytes or null. */
    static long of(Object... values) {
        RowSum sum = new RowSum();
        for (Object value : values) {
            sum.add(value);
        }
        return sum.crc.getValue();
    }

    private void add(Object value) {
        if (value == null) {
            crc.update('0');
        } else if (value instanceof Number number) {
            crc.update('i');
            crc.update(
                    ByteBuffer.allocate(Long.BYTES).putLong(number.longValue()).flip());
        } else if (value instanceof byte[] bytes) {
            add('b', bytes);
        } else {
            add('t', value.toString().getBytes(StandardCharsets.UTF_8));
        }
    }

    private void add(char kind, byte[] bytes) {
        crc.update(kind);
        crc.update(ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).flip());
        crc.update(bytes);
    }
}
