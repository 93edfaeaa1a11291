package fermata.analysis.hold.lattice;

import fermata.analysis.hold.Holds;

/** Expected counts of features over all paths, added to a gradient. Not thread-safe. */
public final class Expectation {
    /** Less likely changes of hold do not move a weight. */
    private static final double NEGLIGIBLE = 1e-5;

    private final Features features;
    private final Scores scores;
    private final Chain chain;

    public Expectation(Features features, Scores scores) {
        this.features = features;
        this.scores = scores;
        this.chain = new Chain(scores);
    }

    double logTotal() {
        return chain.logTotal;
    }

    public void addTo(double[] gradient, double factor) {
        for (int turn = 0; turn < scores.turns; turn++) {
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                addHold(gradient, factor, turn, hold);
            }
            if (turn > 0) {
                addRotations(gradient, factor, turn);
            }
        }
    }

    private void addHold(double[] gradient, double factor, int turn, int hold) {
        double all = 0;
        for (int age = 0; age < Features.AGES; age++) {
            double likely = chain.state(turn, hold * Features.AGES + age);
            all += likely;
            if (likely > NEGLIGIBLE) {
                features.ofAge(turn, hold, age);
                spread(gradient, factor * likely);
            }
        }
        if (all > NEGLIGIBLE) {
            features.ofHold(turn, hold);
            spread(gradient, factor * all);
        }
    }

    private void addRotations(double[] gradient, double factor, int turn) {
        double[] before = chain.forward[turn - 1];
        double[] leaving = chain.leaving(before);
        char[] speaking = features.ofRotations(turn);
        for (int from = 0; from < Holds.COUNT; from++) {
            if (!Chain.leaves(leaving, from)) {
                continue;
            }
            for (int to = 0; to < Holds.COUNT; to++) {
                double likely = from == to ? 0 : chain.change(turn, leaving, from, to);
                if (likely <= NEGLIGIBLE) {
                    continue;
                }
                int first = (from * Holds.COUNT + to) * features.ofRotation;
                for (int feature = first; feature < first + features.ofRotation; feature++) {
                    gradient[speaking[feature]] += factor * likely;
                }
                int broad = scores.broad[turn][from * Holds.COUNT + to];
                for (int age = 0; age < Features.AGES; age++) {
                    double share = before[from * Features.AGES + age]
                            * scores.ageWeights()[age][broad]
                            / leaving[from * 3 + broad];
                    gradient[features.ofRotationAge(age, broad)] += factor * likely * share;
                }
            }
        }
    }

    private void spread(double[] gradient, double amount) {
        for (int feature = 0; feature < features.count; feature++) {
            gradient[features.found[feature]] += amount;
        }
    }
}
