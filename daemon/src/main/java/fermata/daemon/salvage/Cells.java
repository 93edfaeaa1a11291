package fermata.daemon.salvage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Finds the records on a page: where its own directory says, and where that is damaged at every byte. */
final class Cells {
    private static final int TABLE_LEAF = 0x0D;
    private static final int INDEX_LEAF = 0x0A;
    private static final int INDEX_INTERIOR = 0x02;
    private static final int TABLE_INTERIOR = 0x05;
    private static final int PAGE = PageImages.PAGE_BYTES;
    private static final int FILE_HEADER_BYTES = 100;
    /** More than any row has. */
    private static final int MOST_COLUMNS = 24;
    /** Longer than the longest line that is taken from a file. */
    private static final int MOST_BYTES = 12_000_000;

    private final PageImages images;
    private final Consumer<SalvagedRow> taker;

    Cells(PageImages images, Consumer<SalvagedRow> taker) {
        this.images = images;
        this.taker = taker;
    }

    /** Gives all records of a page image; some may be nonsense that only looks like one. */
    void read(byte[] page) throws IOException {
        int header = startsFile(page) ? FILE_HEADER_BYTES : 0;
        int kind = page[header] & 0xFF;
        if (kind == TABLE_INTERIOR) {
            return;
        }
        boolean isOrdered = kind == TABLE_LEAF || kind == INDEX_LEAF || kind == INDEX_INTERIOR;
        if (!isOrdered || !readDirectory(page, header, kind)) {
            readEverywhere(page);
        }
    }

    private static boolean startsFile(byte[] page) {
        return new String(page, 0, 6, StandardCharsets.ISO_8859_1).equals("SQLite");
    }

    /** False if something in the directory is not as it should be. */
    private boolean readDirectory(byte[] page, int header, int kind) throws IOException {
        int cells = unsigned(page, header + 3);
        int pointers = header + (kind == INDEX_INTERIOR ? 12 : 8);
        if (pointers + 2 * cells > PAGE) {
            return false;
        }
        boolean isSound = true;
        for (int i = 0; i < cells; i++) {
            int at = unsigned(page, pointers + 2 * i);
            Optional<SalvagedRow> row = at < pointers + 2 * cells
                    ? Optional.empty()
                    : record(page, kind == INDEX_INTERIOR ? at + 4 : at, kind == TABLE_LEAF, true);
            row.ifPresent(taker);
            isSound &= row.isPresent();
        }
        return isSound;
    }

    private void readEverywhere(byte[] page) throws IOException {
        for (int at = 0; at < PAGE - 4; at++) {
            record(page, at, false, false).ifPresent(taker);
            record(page, at, true, false).ifPresent(taker);
        }
    }

    private static int unsigned(byte[] page, int at) {
        return (page[at] & 0xFF) << 8 | page[at + 1] & 0xFF;
    }

    /** The record that begins at a byte; empty if none does. */
    private Optional<SalvagedRow> record(byte[] page, int at, boolean isOfTable, boolean isListed) throws IOException {
        Varint length = Varint.at(page, at);
        Varint rowId = isOfTable ? Varint.at(page, length.end()) : new Varint(0, length.end());
        if (length.value() < 2 || length.value() > MOST_BYTES || rowId.end() + 2 > PAGE) {
            return Optional.empty();
        }
        int local = local((int) length.value(), isOfTable);
        if (rowId.end() + local > PAGE || !looksLikeRecord(page, rowId.end(), length.value())) {
            return Optional.empty();
        }
        if (local == length.value()) {
            return parse(Arrays.copyOfRange(page, rowId.end(), rowId.end() + local))
                    .map(values -> new SalvagedRow(rowId.value(), isListed, values));
        }
        if (rowId.end() + local + 4 > PAGE) {
            return Optional.empty();
        }
        byte[] whole = Arrays.copyOf(Arrays.copyOfRange(page, rowId.end(), rowId.end() + local), (int) length.value());
        long next = Integer.toUnsignedLong(ByteBuffer.wrap(page).getInt(rowId.end() + local));
        return follow(whole, local, next)
                ? parse(whole).map(values -> new SalvagedRow(rowId.value(), isListed, values))
                : Optional.empty();
    }

    /** How many bytes of a record stand on the page itself. Source: fileformat2.html, section 1.6. */
    private static int local(int length, boolean isOfTable) {
        int most = isOfTable ? PAGE - 35 : (PAGE - 12) * 64 / 255 - 23;
        int least = (PAGE - 12) * 32 / 255 - 23;
        if (length <= most) {
            return length;
        }
        int fitting = least + (length - least) % (PAGE - 4);
        return fitting <= most ? fitting : least;
    }

    private boolean follow(byte[] whole, int from, long first) throws IOException {
        int filled = from;
        long next = first;
        while (filled < whole.length) {
            List<byte[]> found = images.ofPage(next);
            if (found.isEmpty()) {
                return false;
            }
            byte[] page = found.get(0);
            int part = Math.min(PAGE - 4, whole.length - filled);
            System.arraycopy(page, 4, whole, filled, part);
            filled += part;
            next = Integer.toUnsignedLong(ByteBuffer.wrap(page).getInt(0));
        }
        return true;
    }

    /** A look at the record's own header, before anything is copied. */
    private static boolean looksLikeRecord(byte[] page, int at, long length) {
        int headerBytes = page[at] & 0xFF;
        return headerBytes >= 2 && headerBytes < 0x80 && headerBytes <= length;
    }

    private static Optional<List<Object>> parse(byte[] record) {
        int headerBytes = record[0] & 0xFF;
        List<Long> kinds = new ArrayList<>();
        int at = 1;
        long bytes = headerBytes;
        while (at < headerBytes) {
            Varint kind = Varint.at(record, at);
            kinds.add(kind.value());
            bytes += size(kind.value());
            at = kind.end();
            if (kinds.size() > MOST_COLUMNS || kind.value() == 10 || kind.value() == 11 || bytes > record.length) {
                return Optional.empty();
            }
        }
        if (at != headerBytes || bytes != record.length) {
            return Optional.empty();
        }
        List<Object> values = new ArrayList<>();
        int from = headerBytes;
        for (long kind : kinds) {
            int size = (int) size(kind);
            values.add(value(record, kind, from, size));
            from += size;
        }
        return Optional.of(values);
    }

    private static long size(long kind) {
        return switch ((int) Math.min(kind, 12)) {
            case 0, 8, 9, 10, 11 -> 0;
            case 5 -> 6;
            case 6, 7 -> 8;
            case 12 -> (kind - 12) / 2;
            default -> kind < 0 ? Integer.MAX_VALUE : kind;
        };
    }

    private static Object value(byte[] record, long kind, int from, int size) {
        if (kind == 0) {
            return null;
        }
        if (kind == 8 || kind == 9) {
            return kind - 8;
        }
        if (kind >= 12) {
            byte[] bytes = Arrays.copyOfRange(record, from, from + size);
            return kind % 2 == 0 ? bytes : new String(bytes, StandardCharsets.UTF_8);
        }
        long number = record[from];
        for (int i = from + 1; i < from + size; i++) {
            number = number << Byte.SIZE | record[i] & 0xFF;
        }
        return kind == 7 ? (Object) Double.longBitsToDouble(number) : (Object) number;
    }
}
