package fermata.daemon.telling;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.StatedHand;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.TurnRecord;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The solves of which solvers said what the hand did. Not thread-safe. */
public final class CorrectedSolves {
    private final Captures captures;
    private final CaptureReader reader;

    /** As many as teach nearly all that more would; they are read and learned from when a correction was made. */
    private static final int MOST_OTHERS = 80;

    /**
     * One of them.
     *
     * @param log the capture that it is part of
     * @param words what was said
     * @param reading what the words say of the turns that were heard
     */
    public record Corrected(SolveRecord solve, CaptureLog log, Sequence words, HandReading reading) {
        List<Turn> turns() {
            return CorrectedSolves.turns(solve);
        }
    }

    public CorrectedSolves(Captures captures, CaptureReader reader) {
        this.captures = captures;
        this.reader = reader;
    }

    /** A solver's, in the order of the captures. Cost: reads each capture that has one. */
    public List<Corrected> of(String solver) {
        List<Corrected> corrected = new ArrayList<>();
        captures.stated().stream()
                .filter(stated -> stated.solver().equals(solver))
                .map(Captures.Stated::captureId)
                .distinct()
                .map(id -> reader.read(captures.find(id).orElseThrow()).log())
                .forEach(log -> PracticeAnalysis.solves(log)
                        .forEach(solve -> of(solve, log).ifPresent(corrected::add)));
        return corrected;
    }

    /**
     * Solves that a solver did not set right, the newest before the last one set right. No later ones, so that the same
     * corrections always teach the same. Cost: reads captures until it has {@value #MOST_OTHERS}.
     */
    public List<SolveRecord> others(String solver) {
        List<SolveRecord> others = new ArrayList<>();
        boolean isBefore = false;
        List<CaptureRow> all = captures.all();
        for (int row = all.size() - 1; row >= 0 && others.size() < MOST_OTHERS; row--) {
            CaptureRow capture = all.get(row);
            if (!capture.start().origin().solver().equals(solver) || !isBefore && !hasOne(capture)) {
                continue;
            }
            CaptureLog log = reader.read(capture).log();
            List<SolveRecord> solves = PracticeAnalysis.solves(log);
            for (int at = solves.size() - 1; at >= 0 && others.size() < MOST_OTHERS; at--) {
                SolveRecord solve = solves.get(at);
                boolean isSaid = of(solve, log).isPresent();
                isBefore |= isSaid;
                if (isBefore && !isSaid && solve.isSolved() && !solve.attempt().setAside()) {
                    others.add(0, solve);
                }
            }
        }
        return others;
    }

    private boolean hasOne(CaptureRow capture) {
        return captures.stated().stream().anyMatch(stated -> stated.captureId() == capture.id());
    }

    /** The last word on a solve, if it still makes the turns that the solve has. */
    public static Optional<Corrected> of(SolveRecord solve, CaptureLog log) {
        String words = "";
        for (Event event : log.events()) {
            if (event instanceof Event.HandStated stated && stated.attemptId().equals(solve.id())) {
                words = stated.words();
            }
        }
        if (words.isEmpty() || !solve.attempt().gaps().isEmpty()) {
            return Optional.empty();
        }
        Sequence said = Sequence.parse(words);
        return StatedHand.of(said, turns(solve)) instanceof StatedHand.Agrees agrees
                ? Optional.of(new Corrected(solve, log, said, agrees.reading()))
                : Optional.empty();
    }

    private static List<Turn> turns(SolveRecord solve) {
        return solve.turns().stream().map(TurnRecord::core).toList();
    }
}
