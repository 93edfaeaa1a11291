package fermata.analysis.hold.sensor;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.Holds;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * An orientation sensor in the core as evidence for the hold before each turn.
 *
 * <p>What is seen is the hold, tilted by how the solver likes to hold a cube (the median of what is left over), turned
 * by where the sensor's north points, with an error. North is unknown at the start and walks at random; its rate and
 * the size of the error are the likeliest of a few, by the solve's own samples ({@link YawWalk}). Up to quarter turns
 * north is found from the samples alone; which of the four quarters is true is left open as four {@link #assumptions},
 * between which the turns decide. Immutable, thread-safe. Cost: some 0.5 ms a turn when made.
 */
public final class OrientationEvidence implements HoldEvidence {
    private static final double[] NOISES_DEGREES = {3, 6, 12};
    /** A tilt found is corrected for, then looked for again. */
    private static final int ROUNDS = 2;
    /** A yaw less likely than this adds nothing that counts. */
    private static final double NEGLIGIBLE = 1e-4;

    private final double[][] logLikelihood;

    private OrientationEvidence(double[][] logLikelihood) {
        this.logLikelihood = logLikelihood;
    }

    /**
     * Evidence of these samples; none if there are none.
     *
     * @param turns in the core frame
     * @param micros when each turn was made
     * @param beforeTurns how the core lay at each turn, as far as is known: takes its axes (x out of R, y out of U, z
     *     out of F) to a world whose y axis points up
     */
    public static HoldEvidence of(List<Turn> turns, long[] micros, List<Optional<Quaternion>> beforeTurns) {
        if (micros.length != turns.size() || beforeTurns.size() != turns.size()) {
            throw new IllegalArgumentException(
                    micros.length + " times and " + beforeTurns.size() + " samples for " + turns.size() + " turns");
        }
        if (beforeTurns.stream().noneMatch(Optional::isPresent)) {
            return NONE;
        }
        Quaternion[] seen = beforeTurns.stream()
                .map(one -> one.map(q -> Quaternion.scaled(q.w(), q.x(), q.y(), q.z()))
                        .orElse(null))
                .toArray(Quaternion[]::new);
        Quaternion untilt = Quaternion.NONE;
        for (int round = 0; ; round++) {
            Fit fit = Fit.of(micros, seen, untilt);
            if (round == ROUNDS) {
                return new OrientationEvidence(fit.logLikelihoods(turns));
            }
            untilt = untilt(seen, fit.walk().path, untilt);
        }
    }

    @Override
    public double ofHold(int turn, Orientation hold) {
        return logLikelihood[turn][hold.index()];
    }

    @Override
    public List<HoldEvidence> assumptions() {
        return IntStream.range(0, 4).mapToObj(this::northAt).toList();
    }

    /** The same with north so many quarters further on. */
    private HoldEvidence northAt(int quarters) {
        Orientation facing = Orientation.turning(Face.U, quarters);
        return new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                return OrientationEvidence.this.ofHold(turn, hold.then(facing));
            }
        };
    }

    /** What takes back the tilt that is left over on the median, about the two axes that are not the vertical. */
    private static Quaternion untilt(Quaternion[] seen, double[] yaw, Quaternion untilt) {
        double[] right = new double[seen.length];
        double[] front = new double[seen.length];
        int count = 0;
        for (int turn = 0; turn < seen.length; turn++) {
            if (seen[turn] != null) {
                Quaternion level = turned(seen[turn], yaw[turn]);
                Quaternion left = level.after(SensedHold.exact(SensedHold.nearest(untilt.after(level)))
                        .inverse());
                double scale = left.w() < 0 ? -2 : 2;
                right[count] = scale * left.x();
                front[count++] = scale * left.z();
            }
        }
        double aboutRight = median(right, count);
        double aboutFront = median(front, count);
        return Quaternion.about(aboutRight, 0, aboutFront, -Math.hypot(aboutRight, aboutFront));
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }

    private static Quaternion turned(Quaternion seen, double yaw) {
        return Quaternion.about(0, 1, 0, -yaw).after(seen);
    }

    /** The likeliest size of error with its walk of the yaw. */
    private record Fit(Quaternion[] seen, Quaternion untilt, double noiseDegrees, YawWalk walk) {
        static Fit of(long[] micros, Quaternion[] seen, Quaternion untilt) {
            int[][][] steps = steps(seen, untilt);
            double rate = YawWalk.USUAL_RATE;
            double best = NOISES_DEGREES[0];
            double most = Double.NEGATIVE_INFINITY;
            for (double degrees : NOISES_DEGREES) {
                double[] noise = SensedHold.likelihoods(degrees);
                double logLikelihood = YawWalk.at(rate, micros, overHolds(steps, noise)).logLikelihood;
                best = logLikelihood > most ? degrees : best;
                most = Math.max(most, logLikelihood);
            }
            YawWalk walk = YawWalk.of(micros, overHolds(steps, SensedHold.likelihoods(best)));
            return new Fit(seen, untilt, best, walk);
        }

        /** By turn, bin of the yaw and hold: how far off the sample is; null where there is none. */
        private static int[][][] steps(Quaternion[] seen, Quaternion untilt) {
            int[][][] steps = new int[seen.length][][];
            for (int turn = 0; turn < seen.length; turn++) {
                if (seen[turn] != null) {
                    steps[turn] = new int[YawWalk.BINS][Holds.COUNT];
                    for (int bin = 0; bin < YawWalk.BINS; bin++) {
                        Quaternion level = untilt.after(turned(seen[turn], bin * YawWalk.BIN_RADIANS));
                        for (int hold = 0; hold < Holds.COUNT; hold++) {
                            steps[turn][bin][hold] = SensedHold.step(level.angleTo(SensedHold.exact(hold)));
                        }
                    }
                }
            }
            return steps;
        }

        /** By turn and bin: how likely the sample is, whatever the hold. */
        private static double[][] overHolds(int[][][] steps, double[] noise) {
            double[][] likelihoods = new double[steps.length][YawWalk.BINS];
            for (int turn = 0; turn < steps.length; turn++) {
                for (int bin = 0; bin < YawWalk.BINS; bin++) {
                    double sum = steps[turn] == null ? 1 : 0;
                    for (int hold = 0; steps[turn] != null && hold < Holds.COUNT; hold++) {
                        sum += noise[steps[turn][bin][hold]];
                    }
                    likelihoods[turn][bin] = sum;
                }
            }
            return likelihoods;
        }

        /** By turn and hold, over where the other turns say that north is: seen from the walk's own quarter. */
        double[][] logLikelihoods(List<Turn> turns) {
            double[] straight = SensedHold.likelihoods(noiseDegrees);
            double[] off = SensedHold.offTheWay(noiseDegrees);
            double[][] logs = new double[seen.length][Holds.COUNT];
            for (int turn = 0; turn < seen.length; turn++) {
                for (Orientation hold : Orientation.all()) {
                    Face layer = hold.handAt(turns.get(turn).face());
                    double sum = seen[turn] == null ? 1 : 0;
                    for (int bin = 0; seen[turn] != null && bin < YawWalk.BINS; bin++) {
                        double share = walk.cavity[turn][bin];
                        if (share > NEGLIGIBLE) {
                            Quaternion error = untilt.after(turned(seen[turn], yaw(turn, bin)))
                                    .after(SensedHold.exact(hold.index()).inverse());
                            sum += share * SensedHold.atTurn(error, straight, off, layer.axis());
                        }
                    }
                    logs[turn][hold.index()] = Math.log(sum);
                }
            }
            return logs;
        }

        /** A bin stands for the yaw nearest to the path. */
        private double yaw(int turn, int bin) {
            double yaw = bin * YawWalk.BIN_RADIANS;
            return yaw + Math.PI / 2 * Math.rint((walk.path[turn] - yaw) / (Math.PI / 2));
        }
    }
}
