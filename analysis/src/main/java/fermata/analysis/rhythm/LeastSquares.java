package fermata.analysis.rhythm;

/**
 * Weighted least squares with pulls towards given values (ridge regression), by the normal equations and Cholesky's
 * decomposition. Good for a dozen unknowns, each with a pull, so that the equations are never singular.
 */
final class LeastSquares {
    private final double[][] matrix;
    private final double[] right;

    LeastSquares(int unknowns) {
        this.matrix = new double[unknowns][unknowns];
        this.right = new double[unknowns];
    }

    /** Pulls an unknown towards a value as {@code weight} observations of it alone would. */
    void pull(int unknown, double weight, double towards) {
        matrix[unknown][unknown] += weight;
        right[unknown] += weight * towards;
    }

    /** An observation: the sum of {@code by[i]} times the unknown {@code at[i]}. */
    void add(int[] at, double[] by, double weight, double value) {
        for (int row = 0; row < at.length; row++) {
            double weighted = weight * by[row];
            right[at[row]] += weighted * value;
            for (int column = 0; column < at.length; column++) {
                matrix[at[row]][at[column]] += weighted * by[column];
            }
        }
    }

    double[] solve() {
        int size = right.length;
        double[][] lower = new double[size][size];
        double[] solution = new double[size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column <= row; column++) {
                double rest = matrix[row][column];
                for (int inner = 0; inner < column; inner++) {
                    rest -= lower[row][inner] * lower[column][inner];
                }
                lower[row][column] = row == column ? Math.sqrt(rest) : rest / lower[column][column];
            }
            double rest = right[row];
            for (int inner = 0; inner < row; inner++) {
                rest -= lower[row][inner] * solution[inner];
            }
            solution[row] = rest / lower[row][row];
        }
        for (int row = size - 1; row >= 0; row--) {
            for (int below = row + 1; below < size; below++) {
                solution[row] -= lower[below][row] * solution[below];
            }
            solution[row] /= lower[row][row];
        }
        return solution;
    }
}
