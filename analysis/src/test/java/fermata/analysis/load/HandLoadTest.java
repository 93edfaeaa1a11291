package fermata.analysis.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Method;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Provenance;
import fermata.analysis.record.ScrambleRecord;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.Span;
import fermata.analysis.record.TurnRecord;
import fermata.analysis.rest.HandFacts;
import fermata.analysis.rest.PracticedSolve;
import fermata.analysis.rest.RestReader;
import fermata.analysis.rest.Rhythm;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class HandLoadTest {
    private static final long MINUTE = 60_000_000;

    @Test
    void shouldAddUpTurnsAndMinutesWhenSolvesFollowEachOther() {
        HandLoad load = load(solve("a", 0), solve("a", 2), solve("a", 4));

        assertThat(load.solves()).isEqualTo(3);
        assertThat(load.turns()).isEqualTo(12);
        assertThat(load.turningMinutes()).isCloseTo(3 * 0.6 / 60, within(1e-9));
        assertThat(load.longestMinutes()).isCloseTo(4 + 0.6 / 60, within(1e-9));
        assertThat(load.advice()).containsExactly(HandLoad.Advice.STOP_WHEN_IT_HURTS);
    }

    @Test
    void shouldBeginANewStretchAfterABreakOrInAnotherCapture() {
        assertThat(load(solve("a", 0), solve("a", 3), solve("a", 9)).longestMinutes())
                .isCloseTo(3 + 0.6 / 60, within(1e-9));
        assertThat(load(solve("a", 0), solve("b", 1)).longestMinutes()).isCloseTo(0.6 / 60, within(1e-9));
    }

    @Test
    void shouldSuggestShortBreaksWhenAStretchWasLong() {
        List<PracticedSolve> solves = new ArrayList<>();
        for (int minute = 0; minute <= 51; minute += 3) {
            solves.add(solve("a", minute));
        }

        assertThat(load(solves.toArray(PracticedSolve[]::new)).advice())
                .containsExactly(HandLoad.Advice.TAKE_SHORT_BREAKS, HandLoad.Advice.STOP_WHEN_IT_HURTS);
    }

    private static HandLoad load(PracticedSolve... solves) {
        return HandLoad.of(
                List.of(solves),
                List.of(solves).stream()
                        .map(solve -> RestReader.read(solve, Rhythm.coldStart()))
                        .toList());
    }

    private static PracticedSolve solve(String capture, int minute) {
        List<Turn> words = List.of(Turn.parse("R"), Turn.parse("U"), Turn.parse("R'"), Turn.parse("U'"));
        List<TurnRecord> turns = new ArrayList<>();
        for (Turn word : words) {
            turns.add(new TurnRecord(turns.size(), turns.size() * 200_000L, word, TurnSource.HEARD));
        }
        CubeState start = CubeState.SOLVED.apply(words).inverse();
        Segment.Attempt attempt = new Segment.Attempt(
                capture + "-" + minute,
                new Origin("galley", "cook", Hand.LEFT),
                new ScrambleRecord("", Boundary.INFERRED, 0.9, Orientation.IDENTITY, new Span(4, 4), start),
                new Span(4, 8),
                List.of(),
                Outcome.SOLVED,
                false,
                false);
        SolveRecord record = new SolveRecord(
                attempt,
                minute * MINUTE,
                600_000,
                0,
                Method.UNTOLD,
                List.of(),
                turns,
                List.of(),
                List.of(),
                new Provenance("test", "none"));
        return new PracticedSolve(record, HandFacts.guess(record, Hand.LEFT), 0);
    }
}
