package fermata.analysis.rhythm;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.Context;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.statistics.LogNormal;
import java.util.Arrays;
import java.util.List;

/**
 * Learns tonight's rhythm from tonight's beats, beginning with yesterday's.
 *
 * <p>Expectation-maximisation (Dempster, Laird, Rubin 1977) of the model of {@link RestSnapshot}. The fluent part is a
 * ridge regression: each context's level is pulled towards yesterday's level plus a shift that all contexts share, as
 * if by as many beats as it stands on (at most {@value #LONGEST_MEMORY_BEATS}), so a rare transition follows the
 * others. Tonight's own terms are pulled towards 0. No held-up kind is learned evener than the fluent one, for the
 * reason that {@link RestSnapshot} gives. Cost: at most {@value #MOST_STEPS} passes, two exponentials a beat
 * and pass; an evening of 3,000 beats takes some 30 ms.
 */
public final class RestFit {
    static final int MOST_STEPS = 300;
    private static final double LONGEST_MEMORY_BEATS = 2_000;
    private static final double SHORTEST_MICROS = 15_000;
    private static final double NIGHT_SPREAD = 0.08;
    private static final double WARM_UP_SPREAD = 0.1;
    private static final double TIRING_SPREAD = 0.3;
    private static final double SIGMA_BEATS = 20;
    private static final double SMALLEST_SIGMA = 0.08;
    /** A held-up beat takes at least this much more in ln t: else the slow kind creeps into the fluent one. */
    private static final double SMALLEST_SHIFT = 0.25;

    private static final double HELD_UP_BEATS = 30;
    private static final double SHARE_BEATS = 8;
    private static final double SMALLEST_SHARE = 0.002;
    /** Batching and fluke make beats far too short; beyond so many spreads they pull no further. */
    private static final double FARTHEST_BELOW = 3;

    private static final int CONTEXTS = Context.values().length;
    private static final int NIGHT = CONTEXTS + 1;
    private static final int WARM_UP = CONTEXTS + 2;
    private static final int TIRING = CONTEXTS + 3;

    private final RestSnapshot yesterday;
    private final Restraint restraint;
    private final List<Beat> beats;
    private final double[] logs;
    private final double[] rests;

    private RestFit(List<Beat> beats, RestSnapshot yesterday, Restraint restraint) {
        this.yesterday = yesterday;
        this.restraint = restraint;
        this.beats = beats;
        this.logs = beats.stream().mapToDouble(beat -> logOf(beat.micros())).toArray();
        this.rests = new double[logs.length];
    }

    /** The natural logarithm of a beat; none counts as shorter than what a batching radio makes of two quick turns. */
    static double logOf(double micros) {
        return Math.log(Math.max(SHORTEST_MICROS, micros));
    }

    /**
     * What keeps a fit from believing tonight alone.
     *
     * @param pull how strongly yesterday pulls: by so many times the beats that the constants say
     * @param guardsFastest whether the fastest beats are kept from either kind's spread
     * @param smallestChange a step that moves nothing by more than this is the last
     */
    record Restraint(double pull, boolean guardsFastest, double smallestChange, int mostSteps) {
        static final Restraint NIGHTLY = new Restraint(1, true, 1e-5, MOST_STEPS);
        /** The likeliest values of tonight's beats and nothing else. */
        static final Restraint NONE = new Restraint(1e-6, false, 1e-9, 20_000);
    }

    /** The snapshot after a night: {@code yesterday} as it stands where there are no beats. */
    public static RestSnapshot learn(List<Beat> beats, RestSnapshot yesterday) {
        return learn(beats, yesterday, Restraint.NIGHTLY);
    }

    /** The same under another restraint. Cost: some dozen passes over the beats. */
    public static RestSnapshot learn(List<Beat> beats, RestSnapshot yesterday, Restraint restraint) {
        RestSnapshot tonight = begin(yesterday);
        if (beats.isEmpty()) {
            return tonight;
        }
        RestFit fit = new RestFit(beats, yesterday, restraint);
        for (int step = 0; step < restraint.mostSteps(); step++) {
            RestSnapshot next = fit.improve(tonight);
            boolean isSettled = largestChange(tonight, next) < restraint.smallestChange();
            tonight = next;
            if (isSettled) {
                break;
            }
        }
        return tonight;
    }

    private static RestSnapshot begin(RestSnapshot yesterday) {
        return new RestSnapshot(
                yesterday.levels(),
                yesterday.levelWeights(),
                0,
                0,
                yesterday.tiring(),
                yesterday.sigma(),
                yesterday.holdUps(),
                yesterday.restShares(),
                yesterday.beats());
    }

    private static double largestChange(RestSnapshot one, RestSnapshot other) {
        double largest = Math.max(Math.abs(one.sigma() - other.sigma()), Math.abs(one.night() - other.night()));
        for (int context = 0; context < CONTEXTS; context++) {
            largest = Math.max(
                    largest, Math.abs(one.levels().get(context) - other.levels().get(context)));
        }
        for (int kind = 0; kind < HoldUp.values().length; kind++) {
            largest = Math.max(
                    largest,
                    Math.abs(one.holdUps().get(kind).mu()
                            - other.holdUps().get(kind).mu()));
        }
        return largest;
    }

    private RestSnapshot improve(RestSnapshot now) {
        for (int index = 0; index < logs.length; index++) {
            Beat beat = beats.get(index);
            double above = logs[index] - now.fluentLog(beat.context(), beat.solveOfNight());
            double isRest = now.restProbability(beat.place(), above);
            // A wide held-up kind must not claim the very fastest turns.
            boolean isGuarded = restraint.guardsFastest() && above < 0;
            rests[index] = isGuarded ? Math.min(isRest, now.restProbability(beat.place(), 0)) : isRest;
        }
        double[] terms = fluentTerms(now);
        Double[] levels = new Double[CONTEXTS];
        Arrays.setAll(levels, context -> yesterday.levels().get(context) + terms[0] + terms[1 + context]);
        RestSnapshot moved = new RestSnapshot(
                List.of(levels),
                weights(),
                terms[NIGHT],
                terms[WARM_UP],
                terms[TIRING],
                now.sigma(),
                now.holdUps(),
                shares(),
                yesterday.beats() + beats.size());
        return spread(moved);
    }

    private List<Double> weights() {
        double[] weights = yesterday.levelWeights().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int index = 0; index < logs.length; index++) {
            weights[beats.get(index).context().ordinal()] += 1 - rests[index];
        }
        return Arrays.stream(weights)
                .mapToObj(weight -> Math.min(LONGEST_MEMORY_BEATS, weight))
                .toList();
    }

    /** Shared shift, a shift of each context, night, warm-up, tiring: all as changes from yesterday's levels. */
    private double[] fluentTerms(RestSnapshot now) {
        double variance = now.sigma() * now.sigma();
        LeastSquares squares = new LeastSquares(TIRING + 1);
        double total = 0;
        for (int context = 0; context < CONTEXTS; context++) {
            double weight = restraint.pull() * yesterday.levelWeights().get(context);
            squares.pull(1 + context, weight, 0);
            total += weight;
        }
        squares.pull(0, Math.min(LONGEST_MEMORY_BEATS, total), 0);
        // On the first night there is nothing to differ from: all of it goes into the levels.
        squares.pull(NIGHT, yesterday.beats() == 0 ? 1e9 : variance / (NIGHT_SPREAD * NIGHT_SPREAD), 0);
        squares.pull(WARM_UP, variance / (WARM_UP_SPREAD * WARM_UP_SPREAD), 0);
        squares.pull(TIRING, variance / (TIRING_SPREAD * TIRING_SPREAD), yesterday.tiring());
        int[] at = {0, 0, NIGHT, WARM_UP, TIRING};
        double[] by = {1, 1, 1, 0, 0};
        for (int index = 0; index < logs.length; index++) {
            Beat beat = beats.get(index);
            at[1] = 1 + beat.context().ordinal();
            by[3] = Math.exp(-beat.solveOfNight() / RestSnapshot.WARM_UP_SOLVES);
            by[4] = beat.solveOfNight() / RestSnapshot.TIRING_SOLVES;
            double lowest = now.fluentLog(beat.context(), beat.solveOfNight()) - farthestBelow(now);
            double above = Math.max(lowest, logs[index])
                    - yesterday.levels().get(beat.context().ordinal());
            squares.add(at, by, 1 - rests[index], above);
        }
        return squares.solve();
    }

    private double farthestBelow(RestSnapshot now) {
        return restraint.guardsFastest() ? FARTHEST_BELOW * now.sigma() : Double.POSITIVE_INFINITY;
    }

    private List<Double> shares() {
        double ownBeats = restraint.pull() * SHARE_BEATS;
        int kinds = HoldUp.values().length;
        double[] count = new double[Place.COUNT];
        double[] held = new double[Place.COUNT];
        for (int index = 0; index < logs.length; index++) {
            int place = beats.get(index).place().index();
            count[place]++;
            held[place] += rests[index];
        }
        Double[] shares = new Double[Place.COUNT];
        for (int kind = 0; kind < kinds; kind++) {
            double allCount = ownBeats;
            double allHeld = 0;
            double mean = 0;
            for (int place = kind; place < Place.COUNT; place += kinds) {
                allCount += count[place];
                allHeld += held[place];
                mean += yesterday.restShares().get(place) * kinds / Place.COUNT;
            }
            double pooled = (allHeld + ownBeats * mean) / allCount;
            for (int place = kind; place < Place.COUNT; place += kinds) {
                double share = (held[place] + ownBeats * pooled) / (count[place] + ownBeats);
                shares[place] = Math.min(1 - SMALLEST_SHARE, Math.max(SMALLEST_SHARE, share));
            }
        }
        return List.of(shares);
    }

    /** The spreads of both kinds and the shifts of the held-up one, about levels that have just moved. */
    private RestSnapshot spread(RestSnapshot moved) {
        double[] above = new double[logs.length];
        double count = restraint.pull() * SIGMA_BEATS;
        double squares = count * yesterday.sigma() * yesterday.sigma();
        for (int index = 0; index < logs.length; index++) {
            Beat beat = beats.get(index);
            above[index] = logs[index] - moved.fluentLog(beat.context(), beat.solveOfNight());
            double fluent = Math.max(-farthestBelow(moved), above[index]);
            count += 1 - rests[index];
            squares += (1 - rests[index]) * fluent * fluent;
        }
        double sigma = Math.max(SMALLEST_SIGMA, Math.sqrt(squares / count));
        return new RestSnapshot(
                moved.levels(),
                moved.levelWeights(),
                moved.night(),
                moved.warmUp(),
                moved.tiring(),
                sigma,
                Arrays.stream(HoldUp.values())
                        .map(kind -> holdUp(kind, above, sigma))
                        .toList(),
                moved.restShares(),
                moved.beats());
    }

    /** The likeliest shift, and by it the likeliest spread of those that are no smaller than the fluent one. */
    private LogNormal holdUp(HoldUp kind, double[] above, double fluentSigma) {
        LogNormal before = yesterday.holdUps().get(kind.ordinal());
        double pull = restraint.pull() * HELD_UP_BEATS;
        double count = pull;
        double sum = pull * before.mu();
        for (int index = 0; index < above.length; index++) {
            if (beats.get(index).place().holdUp() == kind) {
                count += rests[index];
                sum += rests[index] * above[index];
            }
        }
        double shift = Math.max(SMALLEST_SHIFT, sum / count);
        double squares = pull * before.sigma() * before.sigma();
        for (int index = 0; index < above.length; index++) {
            if (beats.get(index).place().holdUp() == kind) {
                squares += rests[index] * (above[index] - shift) * (above[index] - shift);
            }
        }
        return new LogNormal(shift, Math.max(fluentSigma, Math.sqrt(squares / count)));
    }
}
