package fermata.decoder.solver;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.Objects;
import java.util.random.RandomGenerator;

/** Uniformly random legal states. Stateless; as deterministic as the generator handed in. */
public final class RandomStates {
    private RandomStates() {}

    /** A state drawn uniformly from all 43,252,003,274,489,856,000 reachable ones. */
    public static CubeState uniform(RandomGenerator random) {
        Objects.requireNonNull(random, "random");
        int[] corners = shuffled(8, random);
        int[] edges = shuffled(12, random);
        if (isOdd(corners) != isOdd(edges)) {
            int first = edges[0];
            edges[0] = edges[1];
            edges[1] = first;
        }
        return CubeState.ofCubies(corners, digits(8, 3, random), edges, digits(12, 2, random));
    }

    /**
     * A state drawn uniformly from those at least two turns from solved, as the WCA Regulations ask of a scramble
     * (Article 4b3, 2024-01-01).
     */
    public static CubeState forScramble(RandomGenerator random) {
        CubeState state = uniform(random);
        while (isWithinOneTurn(state)) {
            state = uniform(random);
        }
        return state;
    }

    /** Whether the state is solved or one face turn away from it. */
    public static boolean isWithinOneTurn(CubeState state) {
        if (state.isSolved()) {
            return true;
        }
        for (Turn turn : Turn.all()) {
            if (state.equals(CubeState.of(turn))) {
                return true;
            }
        }
        return false;
    }

    private static int[] shuffled(int size, RandomGenerator random) {
        int[] values = new int[size];
        for (int place = 0; place < size; place++) {
            int other = random.nextInt(place + 1);
            values[place] = values[other];
            values[other] = place;
        }
        return values;
    }

    private static int[] digits(int size, int base, RandomGenerator random) {
        int[] values = new int[size];
        int sum = 0;
        for (int place = 0; place < size - 1; place++) {
            values[place] = random.nextInt(base);
            sum += values[place];
        }
        values[size - 1] = Math.floorMod(-sum, base);
        return values;
    }

    private static boolean isOdd(int[] permutation) {
        boolean odd = false;
        for (int high = 1; high < permutation.length; high++) {
            for (int low = 0; low < high; low++) {
                odd ^= permutation[low] > permutation[high];
            }
        }
        return odd;
    }
}
