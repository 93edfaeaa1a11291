package fermata.daemon.practice;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Origin;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.hand.HandReader;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.SensedOrientations;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.hold.sequence.LearnedSequences;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.Rhythm;
import fermata.analysis.rhythm.RotationEvidence;
import fermata.daemon.document.KnownHand;
import fermata.daemon.document.SolveViews;
import fermata.daemon.holdmodel.HoldFiles;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.daemon.telling.Calibrations;
import fermata.daemon.telling.CorrectedSolves;
import fermata.daemon.telling.OwnSequences;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads what hands did: what the solver said where it was said, else inferred, with what the same solver's corrections
 * teach. One for a derivation; not thread-safe.
 */
public final class Hands {
    private final Captures captures;
    private final CorrectedSolves corrected;
    private final OwnSequences sequences;
    private final LearnedHabits learned;
    private final Derived derived;
    private final HandReader inference = new HandReader(new HoldInference(HoldModel.shipped()));
    private final Map<String, SequenceBook> books = new HashMap<>();
    private final Map<String, HoldHabits> habits = new HashMap<>();
    private final Map<Origin, OwnTimes> own = new HashMap<>();
    private CaptureLog sensedLog;
    private SensedOrientations sensed = SensedOrientations.NONE;

    /**
     * Reads hands of these captures.
     *
     * @param learned what a derivation before this one learned, and this one leaves
     * @param derived what was derived of the days before
     */
    Hands(Captures captures, CaptureReader reader, LearnedHabits learned, Derived derived) {
        this.captures = captures;
        this.corrected = new CorrectedSolves(captures, reader);
        this.sequences = new OwnSequences(captures, reader);
        this.learned = learned;
        this.derived = derived;
    }

    /**
     * Names what reads a capture's hands: the model, its solver's corrections and sequences and the times of the
     * solver's calibration. When it changes, what was derived is stale. Cost: a look at these in the store, of which
     * there are few.
     */
    static String version(Captures captures, CaptureRow capture) {
        String said = String.join(
                "\n",
                captures.stated().stream()
                        .filter(stated -> stated.solver().equals(solver(capture)))
                        .map(stated -> stated.captureId() + " " + stated.line())
                        .toList());
        String drilled = Calibrations.newest(
                        captures, solver(capture), capture.start().origin().hand())
                .map(newest -> "-drill-" + HoldFiles.id(newest.line()))
                .orElse("");
        String typed = OwnSequences.newest(captures, solver(capture))
                .map(newest -> "-sequences-" + HoldFiles.id(newest.line()))
                .orElse("");
        return "hands-6-" + HoldFiles.modelId() + (said.isEmpty() ? "" : "-" + HoldFiles.id(said)) + drilled + typed;
    }

    private static String solver(CaptureRow capture) {
        return capture.start().origin().solver();
    }

    /**
     * Reads a solve.
     *
     * @param yesterday the rhythm of the solver's practice day before; the night's own would chase itself
     * @param repeated the sequences of the days before; the night's own would confirm themselves
     */
    KnownHand read(SolveRecord solve, CaptureLog log, Rhythm yesterday, LearnedSequences repeated) {
        Optional<HandReading> said = CorrectedSolves.of(solve, log).map(CorrectedSolves.Corrected::reading);
        String solver = solve.attempt().origin().solver();
        HoldHabits known = habits.computeIfAbsent(solver, this::learn);
        if (said.isPresent()) {
            // What had been inferred of a solve must not have learned from what was said of it.
            Optional<HandReading> inferred = read(solve, log, yesterday, HoldHabits.NONE, sequences.typedBook(solver));
            return new KnownHand(said, inferred, known.solves(), List.of());
        }
        SequenceBook book = books.computeIfAbsent(solver, sequences::book);
        Optional<HandReading> inferred = read(solve, log, yesterday, known, book);
        List<SequenceReading> turned = inferred
                .filter(reading -> teaches(solve))
                .map(reading -> HandReader.sequences(solve, reading))
                .orElse(List.of())
                .stream()
                // As it is kept, so that it names the same when it is read back.
                .map(one -> new SequenceReading(one.track(), SolveViews.rounded(one.probability())))
                .toList();
        if (repeated.contradict(turned)) {
            inferred = read(solve, log, yesterday, known, book.with(repeated.book()));
        }
        return new KnownHand(inferred, Optional.empty(), known.solves(), turned);
    }

    private static boolean teaches(SolveRecord solve) {
        return solve.isSolved() && !solve.attempt().setAside();
    }

    private Optional<HandReading> read(
            SolveRecord solve, CaptureLog log, Rhythm yesterday, HoldHabits taught, SequenceBook book) {
        return inference.knowing(book).timed(own(solve)).read(solve, taught, rhythm(solve, yesterday), sensed(log));
    }

    /** The sequences that a solver's practice days before one repeat. Cost: a look at some accounts. */
    RepeatedSequences before(RhythmChain.Owner owner, LocalDate day) {
        return RepeatedSequences.before(derived, owner, day);
    }

    /** The times that the solver's calibration taught of the hand that made a solve. */
    OwnTimes own(SolveRecord solve) {
        return own.computeIfAbsent(
                solve.attempt().origin(), origin -> new Calibrations(captures).of(origin.solver(), origin.hand()));
    }

    /** Nothing is known of a rhythm that nothing was learned from, and none is heard without times. */
    private static HoldEvidence rhythm(SolveRecord solve, Rhythm yesterday) {
        boolean isKnown = yesterday.beats().beats() > 0 && solve.turns().get(0).isTimed();
        return isKnown
                ? RotationEvidence.of(solve, solve.attempt().origin().hand(), yesterday.beats())
                : HoldEvidence.NONE;
    }

    /** The solves of one capture are asked for one after the other. */
    private SensedOrientations sensed(CaptureLog log) {
        if (log != sensedLog) {
            sensedLog = log;
            sensed = SensedOrientations.of(log);
        }
        return sensed;
    }

    private HoldHabits learn(String solver) {
        List<HoldExample> said = corrected.of(solver).stream()
                .map(one -> HandReader.example(one.solve(), one.reading()))
                .toList();
        if (said.isEmpty()) {
            return HoldHabits.NONE;
        }
        SequenceBook book = books.computeIfAbsent(solver, sequences::book);
        return learned.of(said, corrected.others(solver), book);
    }
}
