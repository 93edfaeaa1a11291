package fermata.analysis;

import fermata.analysis.attempt.AttemptFinder;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.night.NightSummary;
import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Provenance;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rhythm.Rests;
import fermata.analysis.rhythm.RhythmSnapshot;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.LongStream;

/**
 * The whole analysis of a night, in three steps: learn its rhythm from all its captures and freeze it, read each
 * capture by the frozen rhythm, add the solves up. Pure and deterministic: equal arguments give equal results, and
 * the snapshot's id with {@link #CODE_VERSION} names what gave them. Thread-safe. Cost: near-linear in the turns.
 */
public final class PracticeAnalysis {
    /** Rises with every change that can change a result. */
    public static final String CODE_VERSION = "analysis-1";

    private PracticeAnalysis() {}

    /** All segments of a capture in order, attempts and other turning; they hold every turn once. */
    public static List<Segment> segments(CaptureLog log) {
        return AttemptFinder.find(log);
    }

    /** The rhythm of a night's attempts; {@link RhythmSnapshot#PRIOR} if there are too few turns to learn from. */
    public static RhythmSnapshot learn(List<CaptureLog> night) {
        return RhythmSnapshot.learn(
                night.stream().flatMapToLong(PracticeAnalysis::intervals).toArray());
    }

    private static LongStream intervals(CaptureLog log) {
        SolveReader reader = new SolveReader(log);
        return attempts(log).stream()
                .flatMapToLong(attempt -> Rests.intervalsMicros(reader.turns(attempt), attempt.gaps()));
    }

    /** Every attempt of a capture, solved or not, in order. */
    public static List<SolveRecord> analyse(CaptureLog log, RhythmSnapshot rhythm) {
        SolveReader reader = new SolveReader(log);
        Provenance provenance = provenance(rhythm);
        return attempts(log).stream()
                .map(attempt -> reader.read(attempt, rhythm, provenance))
                .toList();
    }

    /** The summary of a practice day from its attempts, earliest first, as {@link #analyse} gave them. */
    public static NightRecord night(LocalDate day, List<SolveRecord> solves, RhythmSnapshot rhythm) {
        return NightSummary.of(day, solves, provenance(rhythm));
    }

    private static Provenance provenance(RhythmSnapshot rhythm) {
        return new Provenance(CODE_VERSION, rhythm.id());
    }

    private static List<Segment.Attempt> attempts(CaptureLog log) {
        return segments(log).stream()
                .filter(Segment.Attempt.class::isInstance)
                .map(Segment.Attempt.class::cast)
                .toList();
    }
}
