package fermata.analysis.record;

import fermata.analysis.event.Event;
import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * An attempt with its stages: all that its turns tell. What the hand did and where it rested is read from it later, by
 * what was learned. Times are microseconds since its first turn; turn numbers are {@link TurnRecord#index()},
 * and the raw index in the capture is {@link #firstTurn()} more.
 *
 * @param attempt where it lies in its capture, its scramble, hand, gaps and outcome
 * @param firstTurnAtMicros time of the first turn since the capture began, or {@link Event#NO_TIME}
 * @param timeMicros turn time, first to last turn, or {@link Event#NO_TIME}; no penalty, no inspection
 * @param pauseMicros from the scramble's last turn to the first turn of the solve, or {@link Event#NO_TIME} if there is
 *     no clock or the scramble was not heard; not inspection
 * @param method by which it was solved
 * @param crossFaces the face of the cross, by the letter of its centre, in a list of one; empty if the method has none
 * @param turns every turn of it
 * @param stages end to end over all turns; empty if the method is {@link Method#OTHER} or {@link Method#UNTOLD}
 */
public record SolveRecord(
        Segment.Attempt attempt,
        long firstTurnAtMicros,
        long timeMicros,
        long pauseMicros,
        Method method,
        List<Face> crossFaces,
        List<TurnRecord> turns,
        List<StageRecord> stages) {
    public SolveRecord {
        Objects.requireNonNull(attempt, "attempt");
        Objects.requireNonNull(method, "method");
        crossFaces = List.copyOf(crossFaces);
        turns = List.copyOf(turns);
        stages = List.copyOf(stages);
        if (turns.size() != attempt.solve().length() || crossFaces.size() > 1) {
            throw new IllegalArgumentException("solve " + attempt.id() + ": " + turns.size() + " turns for the span "
                    + attempt.solve() + ", " + crossFaces.size() + " cross faces");
        }
    }

    /** {@code captureId-firstTurn}. */
    public String id() {
        return attempt.id();
    }

    /** The raw index, in the capture, of the turn whose index is 0 here. */
    public int firstTurn() {
        return attempt.solve().from();
    }

    /** Whether it ended solved. */
    public boolean isSolved() {
        return attempt.outcome() == Outcome.SOLVED;
    }

    /** Whether turn time is known. */
    public boolean isTimed() {
        return timeMicros != Event.NO_TIME;
    }

    /** The face of the cross; empty if the method has none. Its colour is the cube's at that centre. */
    public Optional<Face> crossFace() {
        return crossFaces.stream().findFirst();
    }
}
