package fermata.decoder.clock;

import java.util.Arrays;

/**
 * The mean of numbers that never fall, and how much those beyond it hold a line that turns about it. A number costs
 * O(1) amortised, as the mean only moves up past them; memory 8 bytes a number. Not thread-safe.
 */
final class Middle {
    private long[] sinceFirst = new long[32];
    private long first;
    private int size;
    private double sum;
    private int below;
    private double sumBelow;

    /** Adds a number that is not below the last. */
    void add(long number) {
        if (size == 0) {
            first = number;
        }
        if (size == sinceFirst.length) {
            sinceFirst = Arrays.copyOf(sinceFirst, 2 * size);
        }
        sinceFirst[size] = number - first;
        sum += sinceFirst[size];
        size++;
        while (below < size && sinceFirst[below] <= sum / size) {
            sumBelow += sinceFirst[below];
            below++;
        }
    }

    /** The mean, rounded; at least one number must have been added. */
    long mean() {
        return first + Math.round(sum / size);
    }

    /** Sum of how far the numbers beyond the mean lie from it, those before it as far in all; 0 if all are equal. */
    double leverage() {
        return below * (sum / size) - sumBelow;
    }
}
