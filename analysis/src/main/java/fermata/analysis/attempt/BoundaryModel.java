package fermata.analysis.attempt;

import fermata.analysis.track.CubeTracker;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where a scramble that nobody announced ends, as a probability.
 *
 * <p>Every reading of a run of turns, as (something before s), scramble from s to t, attempt from t, is weighed by the
 * product of these odds; a <em>pause</em> is an interval of at least a second.
 *
 * <ul>
 *   <li>Pauses: each has a role, with a log-normal length: the gap at t (median {@value #GAP_SECONDS} s), idling at s
 *       (median {@value #IDLE_SECONDS} s), a rest within scramble or attempt (median {@value #REST_SECONDS} s);
 *       before s, whichever fits best.
 *   <li>The scramble's length: Cauchy about {@value #SCRAMBLE_TURNS} turns, half-width {@value #SCRAMBLE_SPREAD};
 *       turns of one face in a row count once, since half turns are often heard as two.
 *   <li>How far from solved the cube is at t: e^-{@value #PIECE_COST} for each piece at home.
 *   <li>The beginning: at the run's own start if the cube was solved there (1), unsolved (e^-1), or at a pause s
 *       (e^-{@value #LATE_START_COST}).
 * </ul>
 *
 * <p>Against all of them stands the reading that nothing of the kind happened: other turning, or an attempt that goes
 * on. Other turning seldom takes a solved cube far away, pauses and goes on (e^{@value #PLAY_LEFT_UNSOLVED}), and
 * hardly ever comes back solved from there (e^{@value #PLAY_BACK_TO_SOLVED}); on a cube that neither was nor gets
 * solved it is as likely as not.
 *
 * <p>All numbers are priors of ours, learned from nobody's log; made-up evenings, whose truth is known, hold them to
 * account in the tests. The state at t must have at least {@value #MISPLACED_AT_LEAST} pieces away from home, and both
 * parts at least {@value #TURNS_AT_LEAST} turns. Cost: the square of the pauses within the last {@value #LONGEST} turns
 * of the run.
 */
final class BoundaryModel {
    static final double GAP_SECONDS = 8;
    static final double IDLE_SECONDS = 20;
    static final double REST_SECONDS = 1.5;
    static final double SCRAMBLE_TURNS = 20;
    static final double SCRAMBLE_SPREAD = 6;
    static final double PIECE_COST = 0.4;
    static final double LATE_START_COST = 3;
    static final double PLAY_BACK_TO_SOLVED = -8;
    static final double PLAY_LEFT_UNSOLVED = -4;
    static final int MISPLACED_AT_LEAST = 12;
    static final int TURNS_AT_LEAST = 8;
    static final int LONGEST = 400;
    private static final double GAP_SIGMA = 1;
    private static final double REST_SIGMA = 0.7;
    /** Log odds that an attempt under way goes on, rather than being dropped for a scramble that nobody announced. */
    private static final double GOES_ON = 2;

    /** One reading: the scramble's two ends, and the probability of its end. */
    record Found(int from, int to, double probability) {}

    private record Reading(int from, int to, double logWeight) {}

    private final Track track;
    private final int from;
    private final int to;
    private final List<Integer> pauses = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    /** How many runs of turns of one face have begun between {@link #from} and a position. */
    private final int[] runs;

    /** Running sums over positions from {@link #from}: of pauses as rests, and of pauses as whatever fits best. */
    private final double[] asRests;

    private final double[] asAnything;

    private BoundaryModel(Track track, int from, int to) {
        this.track = track;
        this.from = Math.max(from, to - LONGEST);
        this.to = to;
        this.runs = track.runsOfOneFace(this.from, to);
        this.asRests = new double[to - this.from + 2];
        this.asAnything = new double[to - this.from + 2];
        for (int position = this.from; position <= to; position++) {
            int entry = position - this.from;
            boolean inside =
                    position > this.from && position < to && track.pauseAt(position) >= CubeTracker.PAUSE_MICROS;
            asRests[entry + 1] = asRests[entry] + (inside ? rest(position) : 0);
            asAnything[entry + 1] = asAnything[entry]
                    + (inside ? Math.max(rest(position), Math.max(gap(position), idle(position))) : 0);
            if (inside) {
                pauses.add(position);
            }
        }
    }

    /** The likeliest attempt in {@code from..to}; empty if other turning is likelier, or there is no clock. */
    static Optional<Found> find(Track track, int from, int to) {
        BoundaryModel model = new BoundaryModel(track, from, to);
        boolean fromBeginning = model.from == from;
        double plain = track.isSolvedAt(from) ? 0 : -1;
        for (int end : model.pauses) {
            if (fromBeginning) {
                model.read(from, end, plain);
            }
            model.readFromPausesBefore(end);
        }
        return model.judged(play(track, from, to) + model.asAnything[to - model.from + 1]);
    }

    private static double play(Track track, int from, int to) {
        if (track.isSolvedAt(to)) {
            return PLAY_BACK_TO_SOLVED;
        }
        return track.isSolvedAt(from) ? PLAY_LEFT_UNSOLVED : 0;
    }

    /** A new scramble after an attempt began at {@code from}; empty if it is likelier that the attempt goes on. */
    static Optional<Found> findWithin(Track track, int from, int to) {
        BoundaryModel model = new BoundaryModel(track, from, to);
        model.pauses.forEach(model::readFromPausesBefore);
        return model.judged(GOES_ON + model.asRests[to - model.from + 1]);
    }

    private void readFromPausesBefore(int end) {
        for (int start : pauses) {
            if (start < end) {
                read(start, end, idle(start) - LATE_START_COST + asAnything[start - from]);
            }
        }
    }

    private void read(int start, int end, double before) {
        int length = end - start;
        int misplaced = track.relative(end).misplaced();
        if (length < TURNS_AT_LEAST || to - end < TURNS_AT_LEAST || misplaced < MISPLACED_AT_LEAST) {
            return;
        }
        double rests =
                asRests[end - from] - asRests[start - from + 1] + asRests[to - from + 1] - asRests[end - from + 1];
        double off = (runs[end - from] - runs[start - from] - SCRAMBLE_TURNS) / SCRAMBLE_SPREAD;
        double shape = -Math.log(1 + off * off) - PIECE_COST * (20 - misplaced);
        readings.add(new Reading(start, end, before + gap(end) + rests + shape));
    }

    private Optional<Found> judged(double otherwise) {
        Optional<Reading> likeliest = readings.stream().max(Comparator.comparingDouble(Reading::logWeight));
        if (likeliest.isEmpty()) {
            return Optional.empty();
        }
        Reading best = likeliest.get();
        double all = 0;
        double sameEnd = 0;
        for (Reading reading : readings) {
            double weight = Math.exp(reading.logWeight - best.logWeight);
            all += weight;
            sameEnd += reading.to == best.to ? weight : 0;
        }
        double none = Math.exp(otherwise - best.logWeight);
        return none > all ? Optional.empty() : Optional.of(new Found(best.from, best.to, sameEnd / (all + none)));
    }

    private double gap(int position) {
        return logNormal(position, GAP_SECONDS, GAP_SIGMA);
    }

    private double idle(int position) {
        return logNormal(position, IDLE_SECONDS, GAP_SIGMA);
    }

    private double rest(int position) {
        return logNormal(position, REST_SECONDS, REST_SIGMA);
    }

    /** Log density of the pause's logarithm, up to a constant that all roles share. */
    private double logNormal(int position, double medianSeconds, double sigma) {
        double off = Math.log(track.pauseAt(position) / 1e6 / medianSeconds) / sigma;
        return -off * off / 2 - Math.log(sigma);
    }
}
