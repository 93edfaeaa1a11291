package fermata.daemon.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * The first hundred bytes of a database, as far as they are the same in every practice. SQLite refuses some damages of
 * them as if permissions were missing or the file were from the future. Source: sqlite.org/fileformat2.html, section
 * 1.3.
 */
final class FileHeader {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int BYTES = 100;

    private FileHeader() {}

    /**
     * Whether it is certain that the header is damaged; a file that is empty or cannot be read has none. Only for a
     * file that no connection of this process has open, since closing it lets go of their locks.
     */
    static boolean isDamaged(Path database) {
        try (InputStream in = Files.newInputStream(database)) {
            byte[] header = in.readNBytes(BYTES);
            return header.length > 0 && !isSound(header);
        } catch (IOException cannotTell) {
            return false;
        }
    }

    private static boolean isSound(byte[] header) {
        return header.length == BYTES
                && Arrays.equals(header, 0, MAGIC.length, MAGIC, 0, MAGIC.length)
                && number(header, 16, 2) == 4096
                && isWithin(header[18], 1, 2)
                && isWithin(header[19], 1, 2)
                && header[20] == 0
                && header[21] == 64
                && header[22] == 32
                && header[23] == 32
                && isWithin(number(header, 44, 4), 0, 4)
                && isWithin(number(header, 56, 4), 0, 1);
    }

    private static boolean isWithin(long value, long least, long most) {
        return value >= least && value <= most;
    }

    private static long number(byte[] header, int at, int bytes) {
        long number = 0;
        for (int i = at; i < at + bytes; i++) {
            number = number << Byte.SIZE | header[i] & 0xFF;
        }
        return number;
    }
}
