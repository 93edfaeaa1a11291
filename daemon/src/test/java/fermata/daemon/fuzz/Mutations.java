package fermata.daemon.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Spoils bytes as wires, disks, editors and neighbours do. The same seed spoils the same. */
final class Mutations {
    private static final int MOST_BYTES = 16_384;
    private static final int MOST_CHANGES = 8;
    private static final int LONGEST_RUN = 64;
    private static final List<byte[]> NUMBERS = texts(List.of(
            "0",
            "-0",
            "-1",
            "1.5",
            "1e999",
            "-1e-999",
            "1e2147483648",
            "2147483647",
            "2147483648",
            "4294967296",
            "9223372036854775807",
            "9223372036854775808",
            "-9223372036854775808",
            "0x10",
            "1e-400",
            "NaN"));

    private final List<byte[]> corpus;
    private final List<byte[]> words;

    /**
     * @param corpus what is spoiled; all of it is good
     * @param words what may be put in: pieces that mean something in these texts
     */
    Mutations(List<byte[]> corpus, List<String> words) {
        this.corpus = List.copyOf(corpus);
        this.words = texts(words);
    }

    static List<byte[]> texts(List<String> texts) {
        return texts.stream().map(text -> text.getBytes(StandardCharsets.UTF_8)).toList();
    }

    /** One of the corpus, spoiled in one to eight places; now and then as it is. */
    byte[] next(SplittableRandom random) {
        byte[] bytes = any(corpus, random).clone();
        int changes = random.nextInt(MOST_CHANGES + 1);
        for (int change = 0; change < changes; change++) {
            bytes = changed(bytes, random);
        }
        return bytes.length > MOST_BYTES ? Arrays.copyOf(bytes, MOST_BYTES) : bytes;
    }

    private byte[] changed(byte[] bytes, SplittableRandom random) {
        int at = random.nextInt(bytes.length + 1);
        int end = Math.min(bytes.length, at + 1 + random.nextInt(LONGEST_RUN));
        return switch (random.nextInt(10)) {
            case 0, 1 -> flipped(bytes, random);
            case 2 -> replaced(bytes, at, Math.min(bytes.length, at + 1), new byte[] {(byte) random.nextInt(256)});
            case 3 -> replaced(bytes, at, at, new byte[] {(byte) random.nextInt(256)});
            case 4 -> replaced(bytes, at, end, new byte[0]);
            case 5 -> replaced(bytes, at, at, Arrays.copyOfRange(bytes, at, end));
            case 6 -> Arrays.copyOf(bytes, at);
            case 7 -> replaced(bytes, at, random.nextBoolean() ? at : end, any(words, random));
            case 8 -> numbered(bytes, at, random);
            default -> spliced(bytes, at, random);
        };
    }

    private static byte[] flipped(byte[] bytes, SplittableRandom random) {
        if (bytes.length > 0) {
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return bytes;
    }

    /** Puts another number in the place of the next digits, or one where there are none. */
    private static byte[] numbered(byte[] bytes, int from, SplittableRandom random) {
        int start = from;
        while (start < bytes.length && !Character.isDigit(bytes[start])) {
            start++;
        }
        int end = start;
        while (end < bytes.length && Character.isDigit(bytes[end])) {
            end++;
        }
        return replaced(bytes, start, end, any(NUMBERS, random));
    }

    private byte[] spliced(byte[] bytes, int at, SplittableRandom random) {
        byte[] other = any(corpus, random);
        int from = random.nextInt(other.length + 1);
        return replaced(bytes, at, bytes.length, Arrays.copyOfRange(other, from, other.length));
    }

    private static byte[] replaced(byte[] bytes, int from, int to, byte[] by) {
        byte[] whole = new byte[from + by.length + bytes.length - to];
        System.arraycopy(bytes, 0, whole, 0, from);
        System.arraycopy(by, 0, whole, from, by.length);
        System.arraycopy(bytes, to, whole, from + by.length, bytes.length - to);
        return whole;
    }

    private static byte[] any(List<byte[]> list, SplittableRandom random) {
        return list.get(random.nextInt(list.size()));
    }
}
