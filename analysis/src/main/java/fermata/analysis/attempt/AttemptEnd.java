package fermata.analysis.attempt;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Ruling;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.ScrambleRecord;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.Span;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Says how an attempt ended, with what was lost in it and what was said about it. */
final class AttemptEnd {
    /**
     * Probability that an attempt begins where the announced words were done though their state was not reached: the
     * words cannot come about by chance, but a solver who did them on an unsolved cube may have meant to go on.
     */
    static final double WORDS_PROBABILITY = 0.99;

    private final CaptureLog log;
    private final Track track;
    private final Map<String, Set<Ruling>> rulings = new HashMap<>();

    AttemptEnd(CaptureLog log, Track track) {
        this.log = log;
        this.track = track;
        for (Event event : log.events()) {
            if (event instanceof Event.Verdict verdict) {
                note(
                        rulings.computeIfAbsent(verdict.attemptId(), id -> EnumSet.noneOf(Ruling.class)),
                        verdict.ruling());
            }
        }
    }

    /** The last word on each question stands. */
    private static void note(Set<Ruling> said, Ruling ruling) {
        switch (ruling) {
            case SOLVED -> said.remove(Ruling.ABANDONED);
            case ABANDONED -> said.remove(Ruling.SOLVED);
            case SET_ASIDE -> said.remove(Ruling.BACK_IN);
            case BACK_IN -> said.remove(Ruling.SET_ASIDE);
            default -> throw new IllegalStateException("ruling " + ruling);
        }
        said.add(ruling);
    }

    Segment.Attempt attempt(ScrambleRecord scramble, int end) {
        Span solve = new Span(scramble.span().to(), end);
        String id = log.captureId() + "-" + solve.from();
        Set<Ruling> said = rulings.getOrDefault(id, Set.of());
        boolean ruled = said.contains(Ruling.SOLVED) || said.contains(Ruling.ABANDONED);
        return new Segment.Attempt(
                id,
                track.turns().get(solve.from()).origin(),
                scramble,
                solve,
                gaps(solve),
                ruled ? ruledOutcome(said) : trackedOutcome(solve),
                ruled,
                said.contains(Ruling.SET_ASIDE));
    }

    private static Outcome ruledOutcome(Set<Ruling> said) {
        return said.contains(Ruling.SOLVED) ? Outcome.SOLVED : Outcome.ABANDONED;
    }

    private Outcome trackedOutcome(Span solve) {
        if (track.isSolvedAt(solve.to())) {
            return Outcome.SOLVED;
        }
        List<Segment.GapRecord> gaps = gaps(solve);
        boolean astray = !gaps.isEmpty() && !gaps.get(gaps.size() - 1).anchored();
        return astray ? Outcome.UNKNOWN_AFTER_GAP : Outcome.ABANDONED;
    }

    private List<Segment.GapRecord> gaps(Span solve) {
        return track.losses().stream()
                .filter(loss -> solve.contains(loss.position()) || endsIn(loss, solve))
                .map(loss -> new Segment.GapRecord(
                        loss.position() - solve.from(), loss.turnsLost(), loss.isAnchoredBy(solve.to())))
                .toList();
    }

    /** Turns lost after the last heard one belong to the attempt if it was not solved by then. */
    private boolean endsIn(Track.Loss loss, Span solve) {
        return loss.position() == solve.to() && !track.turnedSolved(solve.to());
    }
}
