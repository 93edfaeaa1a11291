package fermata.analysis.hold.lattice;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.Holds;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;

/** The log-domain scores of one solve's lattice under one set of weights. Memory: some 700 doubles a turn. */
public final class Scores {
    final int turns;
    /** By turn, hold and age. */
    final double[][] hold;
    /** By turn and 24 * from + to. */
    final double[][] rotation;
    /** By turn and 24 * from + to: the broad reading, 0..2. */
    final byte[][] broad;
    /** By age and broad reading. */
    final double[][] age = new double[Features.AGES][3];

    private final double[][] rotationWeight;
    private double[][] ageWeights;

    /** A lattice in which all readings weigh alike. */
    public Scores(int turns) {
        this.turns = turns;
        this.hold = new double[turns][Holds.COUNT * Features.AGES];
        this.rotation = new double[turns][Holds.COUNT * Holds.COUNT];
        this.broad = new byte[turns][Holds.COUNT * Holds.COUNT];
        this.rotationWeight = new double[turns][];
        for (double[] changes : rotation) {
            for (int same = 0; same < Holds.COUNT; same++) {
                changes[same * Holds.COUNT + same] = Double.NEGATIVE_INFINITY;
            }
        }
    }

    /** Scores a solve. */
    public Scores(Features features, double[] weights) {
        this(features.size());
        for (int broadly = 0; broadly < 3; broadly++) {
            for (int years = 0; years < Features.AGES; years++) {
                age[years][broadly] = weights[features.ofRotationAge(years, broadly)];
            }
        }
        for (int turn = 0; turn < turns; turn++) {
            scoreHolds(features, weights, turn);
            if (turn > 0) {
                scoreRotations(features, weights, turn);
            }
        }
    }

    private void scoreHolds(Features features, double[] weights, int turn) {
        for (int at = 0; at < Holds.COUNT; at++) {
            features.ofHold(turn, at);
            double base = sum(features, weights);
            for (int years = 0; years < Features.AGES; years++) {
                features.ofAge(turn, at, years);
                hold[turn][at * Features.AGES + years] = base + sum(features, weights);
            }
        }
    }

    private void scoreRotations(Features features, double[] weights, int turn) {
        char[] found = features.ofRotations(turn);
        broad[turn] = features.broad(turn);
        for (int from = 0; from < Holds.COUNT; from++) {
            for (int to = 0; to < Holds.COUNT; to++) {
                if (from != to) {
                    int change = from * Holds.COUNT + to;
                    double sum = 0;
                    for (int feature = 0; feature < features.ofRotation; feature++) {
                        sum += weights[found[change * features.ofRotation + feature]];
                    }
                    rotation[turn][change] = sum;
                }
            }
        }
    }

    /** Adds what is known besides the turns. */
    public void join(HoldEvidence evidence) {
        for (int turn = 0; turn < turns; turn++) {
            for (Orientation at : Orientation.all()) {
                double known = evidence.ofHold(turn, at);
                for (int years = 0; years < Features.AGES; years++) {
                    hold[turn][at.index() * Features.AGES + years] += known;
                }
            }
            if (turn > 0) {
                joinRotations(evidence, turn);
            }
        }
    }

    private void joinRotations(HoldEvidence evidence, int turn) {
        double[] known = new double[Holds.COUNT];
        Arrays.setAll(known, rotation -> evidence.ofRotation(turn, Orientation.ofIndex(rotation)));
        for (int from = 0; from < Holds.COUNT; from++) {
            for (int to = 0; to < Holds.COUNT; to++) {
                int change = from * Holds.COUNT + to;
                if (from != to && broad[turn][change] != 0) {
                    rotation[turn][change] += known[Holds.ROTATION[from][to]];
                }
            }
        }
    }

    /** By 24 * from + to: the exponential of a change's score; worked out once, after all evidence has joined. */
    double[] rotationWeight(int turn) {
        if (rotationWeight[turn] == null) {
            double[] weights = new double[Holds.COUNT * Holds.COUNT];
            Arrays.setAll(weights, change -> Math.exp(rotation[turn][change]));
            rotationWeight[turn] = weights;
        }
        return rotationWeight[turn];
    }

    /** By age and broad reading: the exponentials of the ages' scores; worked out once. */
    double[][] ageWeights() {
        if (ageWeights == null) {
            ageWeights = new double[Features.AGES][3];
            for (int years = 0; years < Features.AGES; years++) {
                int same = years;
                Arrays.setAll(ageWeights[years], broadly -> Math.exp(age[same][broadly]));
            }
        }
        return ageWeights;
    }

    private static double sum(Features features, double[] weights) {
        double sum = 0;
        for (int feature = 0; feature < features.count; feature++) {
            sum += weights[features.found[feature]];
        }
        return sum;
    }

    private Scores(Scores like) {
        this.turns = like.turns;
        this.hold = new double[turns][];
        Arrays.setAll(hold, turn -> like.hold[turn].clone());
        this.rotation = like.rotation;
        this.broad = like.broad;
        this.rotationWeight = like.rotationWeight;
        for (int years = 0; years < Features.AGES; years++) {
            age[years] = like.age[years];
        }
    }

    /** The same scores with all holds but these struck out. */
    public Scores only(boolean[][] allowed) {
        Scores some = new Scores(this);
        some.restrict(allowed);
        return some;
    }

    private void restrict(boolean[][] allowed) {
        for (int turn = 0; turn < turns; turn++) {
            for (int at = 0; at < Holds.COUNT; at++) {
                if (!allowed[turn][at]) {
                    Arrays.fill(hold[turn], at * Features.AGES, (at + 1) * Features.AGES, Double.NEGATIVE_INFINITY);
                }
            }
        }
    }
}
