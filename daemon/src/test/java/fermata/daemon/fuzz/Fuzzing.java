package fermata.daemon.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.SplittableRandom;

/**
 * Feeds spoiled inputs to a reader, one seed each. The reader checks what must hold and throws what it may not throw:
 * then seed and input are said. Work is counted in bytes that the reading allocates, which no busy machine changes.
 *
 * <p>How many in a long run, and from which seed on, is asked of the system properties {@code fuzz.inputs} and
 * {@code fuzz.seed}.
 */
final class Fuzzing {
    /** All kinds of inputs together. */
    static final long LONG_RUN = Long.getLong("fuzz.inputs", 10_000_000);

    static final long SEED = Long.getLong("fuzz.seed", 1_000_000_000L);
    private static final int LONGEST_SHOWN = 4_000;
    /** Classes are loaded on the way, which is work once. */
    private static final int WARM = 200;

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private Fuzzing() {}

    /** Reads one input, checks it, and says how many inputs it was. */
    interface Reader {
        int read(byte[] input, SplittableRandom random) throws Exception;
    }

    /**
     * A short run for every day: always the same inputs.
     *
     * @param mostBytes what reading one may allocate, for each byte of the input and beyond a mebibyte
     */
    static void shortly(String kind, long inputs, Mutations mutations, long mostBytes, Reader reader) {
        run(kind, 1, inputs, mutations, mostBytes, reader);
    }

    /** A part of a long run, in per cent of it. */
    static void at(String kind, double percent, Mutations mutations, long mostBytes, Reader reader) {
        long inputs = Math.round(LONG_RUN * percent / 100);
        long most = run(kind, SEED, inputs, mutations, mostBytes, reader);
        System.out.printf(
                "%s: %,d inputs from seed %d on, at most %,d bytes allocated for one%n", kind, inputs, SEED, most);
    }

    private static long run(String kind, long seed, long inputs, Mutations mutations, long mostBytes, Reader reader) {
        long most = 0;
        long done = 0;
        for (long next = seed; done < inputs; next++) {
            SplittableRandom random = new SplittableRandom(next);
            byte[] input = mutations.next(random);
            long before = THREADS.getCurrentThreadAllocatedBytes();
            try {
                done += reader.read(input, random);
            } catch (Throwable fault) {
                throw new AssertionError(kind + ", seed " + next + ": " + fault + "; input " + shown(input), fault);
            }
            long work = THREADS.getCurrentThreadAllocatedBytes() - before;
            most = next - seed >= WARM ? Math.max(most, work) : most;
            if (next - seed >= WARM && work > (1L << 20) + mostBytes * input.length) {
                throw new AssertionError(kind + ", seed " + next + ": " + work + " bytes allocated for an input of "
                        + input.length + "; input " + shown(input));
            }
        }
        return most;
    }

    private static String shown(byte[] input) {
        String text = new String(input, StandardCharsets.ISO_8859_1);
        return text.chars().allMatch(letter -> letter == '\n' || letter >= ' ' && letter < 0x7F)
                ? text.substring(0, Math.min(text.length(), LONGEST_SHOWN))
                : HexFormat.of().formatHex(input, 0, Math.min(input.length, LONGEST_SHOWN));
    }
}
