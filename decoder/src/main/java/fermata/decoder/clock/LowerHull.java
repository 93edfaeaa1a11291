package fermata.decoder.clock;

import java.util.Arrays;

/**
 * Lower convex hull of points that come from left to right: Andrew 1979, "Another efficient algorithm for convex hulls
 * in two dimensions". A point costs O(1) amortised; memory is that of the hull. Not thread-safe.
 */
final class LowerHull {
    private long[] x = new long[16];
    private double[] y = new double[16];
    private int size;

    int size() {
        return size;
    }

    /** Adds a point not left of the last. Of two points at the same x the lower stays. */
    void add(long pointX, double pointY) {
        if (size > 0 && pointX == x[size - 1]) {
            if (pointY >= y[size - 1]) {
                return;
            }
            size--;
        }
        while (size >= 2 && !turnsUp(pointX, pointY)) {
            size--;
        }
        if (size == x.length) {
            x = Arrays.copyOf(x, 2 * size);
            y = Arrays.copyOf(y, 2 * size);
        }
        x[size] = pointX;
        y[size] = pointY;
        size++;
    }

    private boolean turnsUp(long pointX, double pointY) {
        double slope = (y[size - 1] - y[size - 2]) / (x[size - 1] - x[size - 2]);
        double next = (pointY - y[size - 1]) / (pointX - x[size - 1]);
        return next > slope;
    }

    /** Slope of the segment above {@code at}, which must lie between the first and the last point; O(log size). */
    double slopeAt(long at) {
        int right = rightEnd(at);
        return (y[right] - y[right - 1]) / (x[right] - x[right - 1]);
    }

    /** Height of the hull at {@code at}, which must lie between the first and the last point; O(log size). */
    double heightAt(long at) {
        int right = rightEnd(at);
        return y[right] + slopeAt(at) * (at - x[right]);
    }

    /** Height at {@code at} of the highest line of this slope that no point lies under; O(size). */
    double lowest(double slope, long at) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            lowest = Math.min(lowest, y[i] - slope * (x[i] - at));
        }
        return lowest;
    }

    private int rightEnd(long at) {
        if (size < 2) {
            throw new IllegalStateException("a hull of " + size + " points has no segment");
        }
        int found = Arrays.binarySearch(x, 0, size, at);
        int right = found >= 0 ? found : -found - 1;
        return Math.min(Math.max(right, 1), size - 1);
    }
}
