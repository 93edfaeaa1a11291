package fermata.analysis;

import fermata.analysis.attempt.AttemptFinder;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.record.Provenance;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.RestReader;
import fermata.analysis.rest.Rhythm;
import java.util.List;

/**
 * The whole analysis of a practice day, in its order: the attempts of its captures with their stages; then, by
 * yesterday's rhythm, what the hand did (whoever keeps the models of holds does that); then tonight's rhythm, frozen;
 * by it the rests and their causes, what could be seen before each pair, and the losses.
 *
 * <p>Pure and deterministic: equal arguments give equal results, and the rhythm's id with {@link #CODE_VERSION} names
 * what gave them. Thread-safe. Cost: near-linear in the turns.
 */
public final class PracticeAnalysis {
    /** Rises with every change that can change a result. */
    public static final String CODE_VERSION = "analysis-8";

    private PracticeAnalysis() {}

    /** All segments of a capture in order, attempts and other turning; they hold every turn once. */
    public static List<Segment> segments(CaptureLog log) {
        return AttemptFinder.find(log);
    }

    /** Every attempt of a capture, solved or not, in order, with its stages. */
    public static List<SolveRecord> solves(CaptureLog log) {
        SolveReader reader = new SolveReader(log);
        return segments(log).stream()
                .flatMap(segment -> segment.asAttempt().stream())
                .map(reader::read)
                .toList();
    }

    /**
     * Tonight's rhythm, learned from the solves that were solved, timed and not set aside; yesterday's if there are
     * none, for a night without one teaches nothing.
     *
     * @param day the attempts of one practice day by one solver, cube and hand
     * @param yesterday the rhythm of that solver's practice day before, or {@link Rhythm#coldStart()}
     */
    public static Rhythm learn(List<PracticedSolve> day, Rhythm yesterday) {
        List<PracticedSolve> teaching =
                day.stream().filter(solve -> teaches(solve.record())).toList();
        return teaching.isEmpty() ? yesterday : RestReader.learn(teaching, yesterday);
    }

    private static boolean teaches(SolveRecord solve) {
        return solve.isSolved() && solve.isTimed() && !solve.attempt().setAside();
    }

    /** Reads a solve by tonight's rhythm. Without times it has no rests. */
    public static SolveReading read(PracticedSolve solve, Rhythm tonight) {
        return read(solve, tonight, LookAhead.MARGIN_MICROS);
    }

    /**
     * The same with another margin for looking ahead.
     *
     * @param marginMicros so long before it is needed a pair must be identifiable, 0 or more
     */
    public static SolveReading read(PracticedSolve solve, Rhythm tonight, long marginMicros) {
        return SolveReading.of(solve, tonight, marginMicros, new Provenance(CODE_VERSION, tonight.id()));
    }
}
