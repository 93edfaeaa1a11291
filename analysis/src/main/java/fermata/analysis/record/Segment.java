package fermata.analysis.record;

import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.decoder.cube.Span;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** A part of a capture. Segments do not overlap and together hold every turn of it. Indexes are raw. */
public sealed interface Segment {
    /** All turns of it, raw indexes. */
    Span span();

    /** The attempt that it is; empty for other turning. */
    Optional<Attempt> asAttempt();

    /**
     * A scramble, a gap, and a solve.
     *
     * @param id {@code captureId-firstTurn}: the same under every later analysis that finds the same first turn
     * @param origin of its first turn
     * @param scramble what came before, and how that is known
     * @param solve first to last turn of the attempt, raw; never empty
     * @param outcome how it ended
     * @param ruledOutcome whether a verdict, not the tracked state, decided the outcome
     * @param setAside whether a verdict set it aside: it counts in no average
     */
    record Attempt(
            String id,
            Origin origin,
            ScrambleRecord scramble,
            Span solve,
            List<GapRecord> gaps,
            Outcome outcome,
            boolean ruledOutcome,
            boolean setAside)
            implements Segment {
        public Attempt {
            Objects.requireNonNull(id, "id");
            Objects.requireNonNull(origin, "origin");
            Objects.requireNonNull(scramble, "scramble");
            Objects.requireNonNull(solve, "solve");
            gaps = List.copyOf(gaps);
            Objects.requireNonNull(outcome, "outcome");
            if (solve.isEmpty() || scramble.span().to() != solve.from()) {
                throw new IllegalArgumentException("attempt " + id + ": solve " + solve
                        + " is empty or does not follow its scramble " + scramble.span());
            }
        }

        @Override
        public Span span() {
            return new Span(scramble.span().from(), solve.to());
        }

        @Override
        public Optional<Attempt> asAttempt() {
            return Optional.of(this);
        }
    }

    /**
     * Turning that belongs to no attempt: play, a fidget after the last turn, drills.
     *
     * @param span raw indexes; never empty
     */
    record OtherTurning(Span span) implements Segment {
        public OtherTurning {
            if (Objects.requireNonNull(span, "span").isEmpty()) {
                throw new IllegalArgumentException("other turning without a turn at " + span);
            }
        }

        @Override
        public Optional<Attempt> asAttempt() {
            return Optional.empty();
        }
    }

    /**
     * Turns lost inside an attempt.
     *
     * @param beforeTurn index within the solve of the turn that came next; the solve's length if none came
     * @param turnsLost how many, or {@link Event.Gap#UNKNOWN_COUNT}
     * @param anchored whether the state is known again at the end of the attempt: from the cube itself, or because
     *     what was lost can only have been what leaves it solved
     */
    record GapRecord(int beforeTurn, int turnsLost, boolean anchored) {}
}
