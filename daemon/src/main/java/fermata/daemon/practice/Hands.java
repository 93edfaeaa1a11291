package fermata.daemon.practice;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.hand.Habits;
import fermata.analysis.hand.HandReader;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.SensedOrientations;
import fermata.analysis.hand.StatedHand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldInference;
import fermata.analysis.hold.HoldModel;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.TurnRecord;
import fermata.analysis.rest.Rhythm;
import fermata.analysis.rest.RotationEvidence;
import fermata.daemon.hold.HoldFiles;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads what hands did: what the solver said where it was said, else inferred, with what the same solver's corrections
 * teach. One for a derivation; not thread-safe.
 */
final class Hands {
    private final Captures captures;
    private final CaptureReader reader;
    private final HandReader inference = new HandReader(new HoldInference(HoldModel.shipped()));
    private final Map<String, Habits> habits = new HashMap<>();
    private final Map<Origin, OwnTimes> own = new HashMap<>();
    private CaptureLog sensedLog;
    private SensedOrientations sensed = SensedOrientations.NONE;

    /**
     * What is known of one solve's hand; no reading where turns were lost.
     *
     * @param before what had been inferred before the solver said it; empty unless it was said
     */
    record Known(Optional<HandReading> reading, Optional<HandReading> before, int corrections) {}

    Hands(Captures captures, CaptureReader reader) {
        this.captures = captures;
        this.reader = reader;
    }

    /**
     * Names what reads a capture's hands: the model, its solver's corrections and the times of the solver's drill. When
     * it changes, what was derived is stale. Cost: a look at the corrections and drills of the store, of which there
     * are few.
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
        return "hands-2-" + HoldFiles.modelId() + (said.isEmpty() ? "" : "-" + HoldFiles.id(said)) + drilled;
    }

    private static String solver(CaptureRow capture) {
        return capture.start().origin().solver();
    }

    /**
     * Reads a solve.
     *
     * @param yesterday the rhythm of the solver's practice day before; the night's own would chase itself
     */
    Known read(SolveRecord solve, CaptureLog log, Rhythm yesterday) {
        Optional<HandReading> said = stated(solve, log);
        HandReader timed = inference.timed(own(solve));
        Habits known = habits.computeIfAbsent(solve.attempt().origin().solver(), this::learn);
        return said.isPresent()
                ? new Known(said, timed.read(solve, Habits.NONE, rhythm(solve, yesterday), sensed(log)), known.solves())
                : new Known(
                        timed.read(solve, known, rhythm(solve, yesterday), sensed(log)),
                        Optional.empty(),
                        known.solves());
    }

    /** The times that the solver's drill taught of the hand that made a solve. */
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

    /** The last word on a solve, if it still makes the turns that the solve has. */
    private static Optional<HandReading> stated(SolveRecord solve, CaptureLog log) {
        String words = "";
        for (Event event : log.events()) {
            if (event instanceof Event.HandStated stated && stated.attemptId().equals(solve.id())) {
                words = stated.words();
            }
        }
        return words.isEmpty()
                        || !solve.attempt().gaps().isEmpty()
                        || !(StatedHand.of(Sequence.parse(words), turns(solve)) instanceof StatedHand.Agrees agrees)
                ? Optional.empty()
                : Optional.of(agrees.reading());
    }

    private static List<Turn> turns(SolveRecord solve) {
        return solve.turns().stream().map(TurnRecord::core).toList();
    }

    private Habits learn(String solver) {
        List<Habits.Corrected> corrected = new ArrayList<>();
        captures.stated().stream()
                .filter(stated -> stated.solver().equals(solver))
                .map(Captures.Stated::captureId)
                .distinct()
                .map(id -> captures.find(id).orElseThrow())
                .forEach(capture -> addCorrected(capture, corrected));
        return Habits.learn(corrected);
    }

    private void addCorrected(CaptureRow capture, List<Habits.Corrected> corrected) {
        CaptureLog log = reader.read(capture).log();
        for (SolveRecord solve : PracticeAnalysis.solves(log)) {
            Optional<HandReading> said = stated(solve, log);
            Optional<HandReading> read = said.isEmpty()
                    ? Optional.empty()
                    : inference.read(solve, Habits.NONE, HoldEvidence.NONE, sensed(log));
            if (said.isPresent() && read.isPresent()) {
                corrected.add(new Habits.Corrected(turns(solve), read.get(), said.get()));
            }
        }
    }
}
