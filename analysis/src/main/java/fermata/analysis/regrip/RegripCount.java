package fermata.analysis.regrip;

import fermata.analysis.statistics.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * How many regrips a solve has: the exact distribution over all chains of grips. Neighbouring regrips hang together
 * (one sets the wrist for the next), so a sum of independent chances would be a little too wide or too narrow.
 *
 * <p>Cost: pairs of states times the counts that are possible; counts less likely than 1e-12 are not followed.
 */
final class RegripCount {
    private static final double WORTH_FOLLOWING = 1e-12;
    private static final double TAIL = 0.025;

    private final double[] probabilities;

    RegripCount(List<GripStep> steps, double[] start) {
        int most = steps.size() + 1;
        double[][] weights = new double[most + 1][];
        weights[0] = start;
        int low = 0;
        int high = 0;
        for (GripStep step : steps) {
            double[][] next = new double[most + 1][];
            for (int count = low; count <= high + 1; count++) {
                next[count] = new double[start.length];
            }
            List<Way> ways = Way.of(step.arcs());
            for (int count = low; count <= high; count++) {
                follow(ways, step.settle(weights[count]), next[count], next[count + 1]);
            }
            high++;
            scale(next, low, high);
            while (sum(next[high]) < WORTH_FOLLOWING) {
                high--;
            }
            while (sum(next[low]) < WORTH_FOLLOWING) {
                low++;
            }
            weights = next;
        }
        this.probabilities = new double[high + 1];
        for (int count = low; count <= high; count++) {
            probabilities[count] = sum(weights[count]);
        }
        double sum = sum(probabilities);
        for (int count = 0; count <= high; count++) {
            probabilities[count] /= sum;
        }
    }

    /** All arcs from one state to another: whose finger it was does not matter to a count. */
    private static final class Way {
        private final int at;
        private final int to;
        private double still;
        private double regripped;

        private Way(int at, int to) {
            this.at = at;
            this.to = to;
        }

        static List<Way> of(List<GripStep.Arc> arcs) {
            List<Way> ways = new ArrayList<>();
            Way[] byStates = new Way[GripState.COUNT * GripState.COUNT];
            for (GripStep.Arc arc : arcs) {
                int states = arc.at() * GripState.COUNT + arc.to();
                if (byStates[states] == null) {
                    byStates[states] = new Way(arc.at(), arc.to());
                    ways.add(byStates[states]);
                }
                byStates[states].still += arc.regrip() ? 0 : arc.weight();
                byStates[states].regripped += arc.regrip() ? arc.weight() : 0;
            }
            return ways;
        }
    }

    private static void follow(List<Way> ways, double[] weights, double[] same, double[] more) {
        for (Way way : ways) {
            same[way.to] += weights[way.at] * way.still;
            more[way.to] += weights[way.at] * way.regripped;
        }
    }

    /** Makes the weights add up to 1: a product of many would vanish. */
    private static void scale(double[][] weights, int low, int high) {
        double sum = 0;
        for (int count = low; count <= high; count++) {
            sum += sum(weights[count]);
        }
        for (int count = low; count <= high; count++) {
            for (int state = 0; state < weights[count].length; state++) {
                weights[count][state] /= sum;
            }
        }
    }

    private static double sum(double[] weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        return sum;
    }

    /** The probability of each count, from 0. */
    double[] probabilities() {
        return probabilities.clone();
    }

    /** The central 95 %. */
    Interval central() {
        int low = 0;
        double below = probabilities[0];
        while (below <= TAIL) {
            low++;
            below += probabilities[low];
        }
        int high = probabilities.length - 1;
        double above = probabilities[high];
        while (above <= TAIL) {
            high--;
            above += probabilities[high];
        }
        return new Interval(low, high);
    }
}
