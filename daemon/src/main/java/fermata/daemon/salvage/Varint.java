package fermata.daemon.salvage;

/**
 * A number of one to nine bytes, the high ones first. Source: sqlite.org/fileformat2.html, section 1.6.
 *
 * @param value the number; -1 if the bytes end before it does
 * @param end the byte after it
 */
record Varint(long value, int end) {
    static Varint at(byte[] bytes, int at) {
        long value = 0;
        for (int i = 0; i < 9; i++) {
            if (at + i >= bytes.length) {
                return new Varint(-1, bytes.length);
            }
            int part = bytes[at + i] & 0xFF;
            if (i == 8) {
                return new Varint(value << 8 | part, at + 9);
            }
            value = value << 7 | part & 0x7F;
            if (part < 0x80) {
                return new Varint(value, at + i + 1);
            }
        }
        throw new IllegalStateException("a number has nine bytes at most");
    }
}
