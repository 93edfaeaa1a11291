package fermata.analysis.rhythm;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.Context;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.statistics.LogNormal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A solver's rhythm, frozen. Equal values have equal ids.
 *
 * <p>Fluent beats: ln t is normal about {@code levels[context] + night + warmUp e^(-k/5) + tiring k/100}, k solves
 * into the night, with spread {@code sigma}. Held-up beats: the same plus a shift above zero that itself varies, by
 * {@link HoldUp}. How likely a beat is held up depends on its {@link Place}. Times in microseconds.
 *
 * <p>What varies on top of something that varies is never evener than it, so a held-up kind is never judged with a
 * smaller spread than the fluent one: see {@link #heldUp}. With a smaller one the fluent tail would overtake the kind's
 * own, and the longest pauses of all would be called fluent. As it is, the log odds of a rest rise with ln t by at
 * least shift / spread squared, so a longer beat is never less a rest.
 *
 * @param levels by {@link Context}, natural logarithm
 * @param levelWeights on how many fluent beats each level stands
 * @param night how tonight differs
 * @param warmUp how the first solves differ
 * @param tiring by how much ln t rises in a hundred solves
 * @param sigma spread of the fluent logarithm
 * @param holdUps shift ({@code mu}) and spread, by {@link HoldUp}; as learned, {@link #heldUp} is what judges
 * @param restShares by {@link Place}, in declaration order of stretch and kind
 * @param beats how many beats it was learned from, over all nights; 0 for the cold start
 */
public record RestSnapshot(
        List<Double> levels,
        List<Double> levelWeights,
        double night,
        double warmUp,
        double tiring,
        double sigma,
        List<LogNormal> holdUps,
        List<Double> restShares,
        long beats) {
    /** Solves after which the warm-up has fallen to 1/e. */
    static final double WARM_UP_SOLVES = 5;
    /** Solves in which {@link #tiring} comes about. */
    static final double TIRING_SOLVES = 100;

    public RestSnapshot {
        levels = List.copyOf(levels);
        levelWeights = List.copyOf(levelWeights);
        holdUps = List.copyOf(holdUps);
        restShares = List.copyOf(restShares);
        requireSize("levels", levels, Context.values().length);
        requireSize("levelWeights", levelWeights, Context.values().length);
        requireSize("holdUps", holdUps, HoldUp.values().length);
        requireSize("restShares", restShares, Place.COUNT);
        boolean allFinite = DoubleStream.concat(
                        DoubleStream.of(night, warmUp, tiring), levels.stream().mapToDouble(Double::doubleValue))
                .allMatch(Double::isFinite);
        if (!(sigma > 0) || beats < 0 || !allFinite) {
            throw new IllegalArgumentException("rhythm with sigma " + sigma + ", " + beats + " beats, levels " + levels
                    + ": sigma must be positive, beats not below 0, the rest finite");
        }
        if (holdUps.stream().anyMatch(holdUp -> holdUp.mu() <= 0)
                || restShares.stream().anyMatch(share -> !(share > 0 && share < 1))) {
            throw new IllegalArgumentException("a held-up beat must be slower than a fluent one and its share inside"
                    + " 0..1: " + holdUps + ", " + restShares);
        }
    }

    private static void requireSize(String name, List<?> values, int size) {
        if (values.size() != size) {
            throw new IllegalArgumentException(values.size() + " " + name + " given, " + size + " needed");
        }
    }

    /**
     * Where everybody begins. Medians from common practice, no source: 250 ms to a neighbouring face, 160 ms to the
     * same one, an eighth faster inside a known sequence; spread 0.3. It stands on few beats, so that one evening
     * outweighs it.
     */
    public static RestSnapshot coldStart() {
        Double[] levels = new Double[Context.values().length];
        double[] millis = {160, 260, 250, 140, 230, 220, 250};
        Arrays.setAll(levels, context -> Math.log(millis[context] * 1000));
        Double[] shares = new Double[Place.COUNT];
        double[] share = {0.03, 0.5, 0.85, 0.8, 0.6, 0.9, 0.8, 0.95};
        Arrays.setAll(shares, place -> share[place % share.length]);
        return new RestSnapshot(
                List.of(levels),
                Collections.nCopies(levels.length, COLD_START_BEATS),
                0,
                0,
                0,
                0.3,
                List.of(
                        new LogNormal(0.9, 0.5),
                        new LogNormal(0.55, 0.4),
                        new LogNormal(1.0, 0.4),
                        new LogNormal(1.0, 0.4),
                        new LogNormal(1.3, 0.5),
                        new LogNormal(1.5, 0.5),
                        new LogNormal(1.3, 0.5),
                        new LogNormal(1.5, 0.5)),
                List.of(shares),
                0);
    }

    private static final double COLD_START_BEATS = 10;

    /**
     * Where everybody begins, with what the solver's calibration says of rotations and regrips: how much longer they
     * take than the next turn. Only their shifts are drawn towards the calibration's; a drill is evener than a solve,
     * so the spreads stay. A rhythm that was learned has heard the solver's own rotations and stays as it is.
     */
    public RestSnapshot informed(OwnTimes own) {
        if (beats > 0) {
            return this;
        }
        List<LogNormal> informed = new ArrayList<>(holdUps);
        LogNormal regrip = holdUps.get(HoldUp.REGRIP.ordinal());
        LogNormal rotation = holdUps.get(HoldUp.ROTATION.ordinal());
        informed.set(HoldUp.REGRIP.ordinal(), shifted(regrip, own.regripLogAbove(regrip.mu())));
        informed.set(HoldUp.ROTATION.ordinal(), shifted(rotation, own.rotationLogAbove(rotation.mu())));
        return new RestSnapshot(levels, levelWeights, night, warmUp, tiring, sigma, informed, restShares, beats);
    }

    /** A calibration in which it took no longer makes it all but inaudible; it never speaks for quicker turns. */
    private static LogNormal shifted(LogNormal holdUp, double mu) {
        return new LogNormal(Math.max(LEAST_SHIFT, mu), holdUp.sigma());
    }

    private static final double LEAST_SHIFT = 0.01;

    /** The natural logarithm of the fluent median of a beat, in microseconds. */
    public double fluentLog(Context context, int solveOfNight) {
        return levels.get(context.ordinal())
                + night
                + warmUp * Math.exp(-solveOfNight / WARM_UP_SOLVES)
                + tiring * solveOfNight / TIRING_SOLVES;
    }

    /** How likely a beat at a place is held up, before its length is known. */
    public double restShare(Place place) {
        return restShares.get(place.index());
    }

    /**
     * A kind of held-up beat as beats are judged by it: ln t above the fluent median, its spread at least the fluent
     * one. The fit gives no other; a rhythm that was stored before it did so keeps its values and its id, and is read
     * soundly all the same.
     */
    LogNormal heldUp(HoldUp kind) {
        LogNormal learned = holdUps.get(kind.ordinal());
        return learned.sigma() >= sigma ? learned : new LogNormal(learned.mu(), sigma);
    }

    private static DoubleStream values(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue);
    }

    /** Twelve hexadecimal digits of a SHA-256 over the values. */
    public String id() {
        DoubleStream kinds = holdUps.stream().flatMapToDouble(holdUp -> DoubleStream.of(holdUp.mu(), holdUp.sigma()));
        return SnapshotId.of(Stream.of(
                        values(levels),
                        values(levelWeights),
                        DoubleStream.of(night, warmUp, tiring, sigma, beats),
                        kinds,
                        values(restShares))
                .flatMapToDouble(Function.identity()));
    }

    /**
     * What the rhythm makes of a beat. A beat under the fluent median is judged as if it were the median: a wide
     * held-up kind must not claim the very fastest turns. So a longer beat is never less likely a rest.
     */
    public BeatReading read(Beat beat) {
        Objects.requireNonNull(beat, "beat");
        double fluent = fluentLog(beat.context(), beat.solveOfNight());
        double log = Math.max(fluent, RestFit.logOf(beat.micros()));
        return new BeatReading(beat, restProbability(beat.place(), log - fluent), Math.exp(fluent), sigma);
    }

    double restProbability(Place place, double aboveFluent) {
        double share = restShare(place);
        LogNormal holdUp = heldUp(place.holdUp());
        double slow = (aboveFluent - holdUp.mu()) / holdUp.sigma();
        double fluent = aboveFluent / sigma;
        // The ratio of two normal densities: their common constant falls out, and one exponential is left.
        double against = (1 - share) * holdUp.sigma() / (share * sigma) * Math.exp((slow * slow - fluent * fluent) / 2);
        return 1 / (1 + against);
    }
}
