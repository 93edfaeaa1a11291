package fermata.analysis.attempt;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where a scramble that nobody announced ends, as a probability.
 *
 * <p>Every way to read a run of turns as (other turning), scramble from s to t, attempt from t is weighed by the
 * product of four odds, and all of them against the reading that the run is other turning:
 *
 * <ul>
 *   <li>the pause at t: log-normal about {@value #GAP_SECONDS} s, against log-normal about the run's own median
 *   interval;
 *   <li>the length of the scramble: Cauchy about {@value #SCRAMBLE_TURNS} turns, half-width {@value #SCRAMBLE_SPREAD};
 *   <li>how far from solved the cube is at t: e^-{@value #PIECE_COST} for each piece at home;
 *   <li>the beginning: a solved cube, or else a pause at s, at e^-{@value #LATE_START_COST}.
 * </ul>
 *
 * <p>All numbers are priors of ours, chosen before any log was seen. The state at t must have at least
 * {@value #MISPLACED_AT_LEAST} pieces away from home, and both parts at least {@value #TURNS_AT_LEAST} turns. Cost:
 * pauses over a second, squared, within the last {@value #LONGEST} turns of the run.
 */
final class BoundaryModel {
    static final double GAP_SECONDS = 8;
    static final double SCRAMBLE_TURNS = 20;
    static final double SCRAMBLE_SPREAD = 6;
    static final double PIECE_COST = 0.4;
    static final double LATE_START_COST = 2;
    static final int MISPLACED_AT_LEAST = 12;
    static final int TURNS_AT_LEAST = 8;
    static final int LONGEST = 400;
    private static final double GAP_SIGMA = 1.0;
    private static final double RHYTHM_SIGMA = 0.6;
    /** No single pause may count for more: beyond e^12 the shapes of the tails are guesses. */
    private static final double MOST_EVIDENCE = 12;
    /** Log odds that a run is play rather than one given reading as an attempt, before anything is looked at. */
    private static final double PLAY = 2;
    /** Shorter pauses (microseconds) are no candidates. */
    private static final long SHORTEST_PAUSE_MICROS = 1_000_000;

    /** One reading: the scramble's two ends, and the probability of its end. */
    record Found(int from, int to, double probability) {}

    private record Reading(int from, int to, double logWeight) {}

    private BoundaryModel() {}

    /** The likeliest attempt in {@code from..to}; empty if other turning is likelier, or there is no clock. */
    static Optional<Found> find(Track track, int from, int to) {
        int earliest = Math.max(from, to - LONGEST);
        List<Integer> pauses = new ArrayList<>();
        for (int position = earliest + 1; position < to; position++) {
            if (track.pauseAt(position) >= SHORTEST_PAUSE_MICROS) {
                pauses.add(position);
            }
        }
        double rhythm = Math.log(medianPause(track, earliest, to));
        List<Reading> readings = readings(track, earliest, to, pauses, rhythm);
        return readings.stream()
                .max((a, b) -> Double.compare(a.logWeight, b.logWeight))
                .flatMap(best -> judged(best, readings));
    }

    private static Optional<Found> judged(Reading best, List<Reading> readings) {
        double play = Math.exp(PLAY - best.logWeight);
        double all = play;
        double sameEnd = 0;
        for (Reading reading : readings) {
            double weight = Math.exp(reading.logWeight - best.logWeight);
            all += weight;
            sameEnd += reading.to == best.to ? weight : 0;
        }
        return play > all - play ? Optional.empty() : Optional.of(new Found(best.from, best.to, sameEnd / all));
    }

    private static List<Reading> readings(Track track, int from, int to, List<Integer> pauses, double rhythm) {
        List<Reading> readings = new ArrayList<>();
        for (int end : pauses) {
            double misplaced = misplaced(track.relative(end));
            if (misplaced < MISPLACED_AT_LEAST || to - end < TURNS_AT_LEAST) {
                continue;
            }
            double atEnd = evidence(track.pauseAt(end), rhythm) - PIECE_COST * (20 - misplaced);
            double plain = track.isSolvedAt(from) ? 0 : -1;
            addReading(readings, from, end, atEnd + plain);
            for (int start : pauses) {
                if (start < end) {
                    // A pause allows a beginning; it must not speak for one, or any two rests would outweigh a solved
                    // start.
                    double atStart = Math.min(0, evidence(track.pauseAt(start), rhythm));
                    addReading(readings, start, end, atEnd + atStart - LATE_START_COST);
                }
            }
        }
        return readings;
    }

    private static void addReading(List<Reading> readings, int from, int to, double logWeight) {
        int length = to - from;
        if (length >= TURNS_AT_LEAST) {
            double off = (length - SCRAMBLE_TURNS) / SCRAMBLE_SPREAD;
            readings.add(new Reading(from, to, logWeight - Math.log(1 + off * off)));
        }
    }

    /** Log odds of a pause being a gap between scramble and solve, against being an interval of this rhythm. */
    private static double evidence(long pauseMicros, double logRhythmMicros) {
        double log = Math.log(pauseMicros);
        double gap = (log - Math.log(GAP_SECONDS * 1e6)) / GAP_SIGMA;
        double turn = (log - logRhythmMicros) / RHYTHM_SIGMA;
        double odds = (turn * turn - gap * gap) / 2 + Math.log(RHYTHM_SIGMA / GAP_SIGMA);
        return Math.max(-MOST_EVIDENCE, Math.min(MOST_EVIDENCE, odds));
    }

    private static double medianPause(Track track, int from, int to) {
        long[] pauses = new long[Math.max(1, to - from - 1)];
        for (int position = from + 1; position < to; position++) {
            pauses[position - from - 1] = track.pauseAt(position);
        }
        Arrays.sort(pauses);
        return Math.max(1, pauses[pauses.length / 2]);
    }

    private static double misplaced(CubeState state) {
        int away = 0;
        for (Corner place : Corner.values()) {
            away += state.isSolved(place) ? 0 : 1;
        }
        for (Edge place : Edge.values()) {
            away += state.isSolved(place) ? 0 : 1;
        }
        return away;
    }
}
