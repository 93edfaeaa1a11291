package fermata.analysis.hotspot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What one place cost in each solve. Most solves lose nothing at most places, so only those that do take memory: twelve
 * bytes each.
 */
final class PlaceSums {
    private static final double CLEAR_FROM = 0.5;
    private static final double CLEAR_MICROS = 100_000;
    private static final int EXAMPLES = 3;
    private static final Comparator<Loss> CLEAREST = Comparator.comparingDouble(
                    (Loss loss) -> loss.clarity() * loss.micros())
            .reversed();

    private final HotspotKey key;
    private int[] solves = new int[4];
    private double[] micros = new double[4];
    private int size;
    private int clear;
    private int lastClearSolve = -1;
    private int lastClearTurn;
    private final List<Loss> examples = new ArrayList<>(EXAMPLES + 1);

    PlaceSums(HotspotKey key) {
        this.key = key;
    }

    HotspotKey key() {
        return key;
    }

    /** How many rests are likely and long enough to count. */
    int clear() {
        return clear;
    }

    /** The clearest, first one first. */
    List<Loss> examples() {
        return List.copyOf(examples);
    }

    /** Adds a loss of a solve; solves come in rising order. */
    void add(int solve, Loss loss) {
        if (size == 0 || solves[size - 1] != solve) {
            if (size == solves.length) {
                solves = Arrays.copyOf(solves, size + size / 2);
                micros = Arrays.copyOf(micros, size + size / 2);
            }
            solves[size] = solve;
            micros[size++] = 0;
        }
        micros[size - 1] += loss.micros();
        if (loss.clarity() >= CLEAR_FROM && loss.micros() >= CLEAR_MICROS) {
            // A rest with two clear causes is one rest, where causes are added up.
            boolean isSameRest = solve == lastClearSolve && loss.afterTurn() == lastClearTurn;
            clear += isSameRest ? 0 : 1;
            lastClearSolve = solve;
            lastClearTurn = loss.afterTurn();
            keep(loss);
        }
    }

    private void keep(Loss loss) {
        examples.add(loss);
        examples.sort(CLEAREST);
        // The clearest of a rest's causes stands for it.
        Loss clearest = examples.stream()
                .filter(other -> isSameRest(other, loss))
                .findFirst()
                .orElseThrow();
        examples.removeIf(other -> other != clearest && isSameRest(other, loss));
        if (examples.size() > EXAMPLES) {
            examples.remove(EXAMPLES);
        }
    }

    private static boolean isSameRest(Loss one, Loss other) {
        return one.solveId().equals(other.solveId()) && one.afterTurn() == other.afterTurn();
    }

    double total() {
        return Arrays.stream(micros, 0, size).sum();
    }

    /**
     * The microseconds of every solve, night by night.
     *
     * @param nightEnds for each night the number of solves up to its end
     */
    List<double[]> nights(int[] nightEnds) {
        List<double[]> nights = new ArrayList<>();
        int at = 0;
        int begin = 0;
        for (int end : nightEnds) {
            double[] night = new double[end - begin];
            for (; at < size && solves[at] < end; at++) {
                night[solves[at] - begin] = micros[at];
            }
            nights.add(night);
            begin = end;
        }
        return nights;
    }

    /** How sure the mean over so many solves in so many nights is. */
    NightMeans.Spread spread(int[] nightEnds) {
        double[] sums = new double[nightEnds.length];
        double squares = 0;
        int night = 0;
        for (int at = 0; at < size; at++) {
            while (solves[at] >= nightEnds[night]) {
                night++;
            }
            sums[night] += micros[at];
            squares += micros[at] * micros[at];
        }
        return NightMeans.Spread.of(sums, squares, nightEnds);
    }
}
