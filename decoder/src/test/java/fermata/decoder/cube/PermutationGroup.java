package fermata.decoder.cube;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/**
 * The order of a permutation group, for checks only.
 *
 * <p>Knuth's version of the Schreier-Sims algorithm (Efficient representation of perm groups, Combinatorica 11,
 * 1991): level i holds, for each point its base point can reach, one element of the group of level i that takes it
 * there.
 */
final class PermutationGroup {
    private final int degree;
    private final List<Level> levels = new ArrayList<>();

    PermutationGroup(List<int[]> generators) {
        this.degree = generators.get(0).length;
        for (int[] generator : generators) {
            addUnlessMember(0, generator);
        }
    }

    BigInteger order() {
        BigInteger order = BigInteger.ONE;
        for (Level level : levels) {
            order = order.multiply(BigInteger.valueOf(level.reached));
        }
        return order;
    }

    private void addUnlessMember(int depth, int[] element) {
        int moved = firstMovedAfterSifting(depth, element);
        if (moved < 0) {
            return;
        }
        if (depth == levels.size()) {
            levels.add(new Level(moved, degree));
        }
        Level level = levels.get(depth);
        level.generators.add(element);
        for (int[] representative : level.representatives.clone()) {
            if (representative != null) {
                close(depth, product(representative, element));
            }
        }
    }

    private int firstMovedAfterSifting(int depth, int[] element) {
        int[] rest = element;
        for (int at = depth; at < levels.size(); at++) {
            Level level = levels.get(at);
            int[] representative = level.representatives[rest[level.point]];
            if (representative == null) {
                return level.point;
            }
            rest = product(rest, inverse(representative));
        }
        return firstMoved(rest);
    }

    private void close(int depth, int[] element) {
        Level level = levels.get(depth);
        int image = element[level.point];
        int[] representative = level.representatives[image];
        if (representative == null) {
            level.representatives[image] = element;
            level.reached++;
            for (int[] generator : List.copyOf(level.generators)) {
                close(depth, product(element, generator));
            }
        } else {
            addUnlessMember(depth + 1, product(element, inverse(representative)));
        }
    }

    private static int[] product(int[] first, int[] second) {
        int[] product = new int[first.length];
        for (int point = 0; point < first.length; point++) {
            product[point] = second[first[point]];
        }
        return product;
    }

    private static int[] inverse(int[] permutation) {
        int[] inverse = new int[permutation.length];
        for (int point = 0; point < permutation.length; point++) {
            inverse[permutation[point]] = point;
        }
        return inverse;
    }

    private static int firstMoved(int[] permutation) {
        for (int point = 0; point < permutation.length; point++) {
            if (permutation[point] != point) {
                return point;
            }
        }
        return -1;
    }

    private static final class Level {
        final int point;
        final List<int[]> generators = new ArrayList<>();
        final int[][] representatives;
        int reached = 1;

        Level(int point, int degree) {
            this.point = point;
            this.representatives = new int[degree][];
            int[] identity = new int[degree];
            for (int place = 0; place < degree; place++) {
                identity[place] = place;
            }
            representatives[point] = identity;
        }
    }
}
