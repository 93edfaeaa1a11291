package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.event.Ruling;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How attempts end: by a moved reference, with turns lost, by what was said. */
class AttemptOutcomeTest {
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";

    @Test
    void shouldMeasureSolvedByTheReferenceWhenItWasMoved() {
        CubeState twisted = CubeState.ofCubies(
                new int[] {0, 1, 2, 3, 4, 5, 6, 7},
                new int[] {1, 0, 0, 0, 0, 0, 0, 0},
                new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11},
                new int[12]);
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .snapshot(twisted)
                .reference(twisted)
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .undo(WORDS));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_STATE);
        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.scramble().start()).isEqualTo(Sequence.parse(WORDS).state());
    }

    @Test
    void shouldEndSolvedWhenTheReferenceMovesToWhereTheSolverStopped() {
        CubeState reached = CubeState.SOLVED.apply(Turn.parse("U"));
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .undo(WORDS)
                .undo("U'")
                .reference(reached)
                .pause(5));

        // The cube was solved one turn earlier already, by the reference that held then.
        assertThat(attempt.solve().to()).isEqualTo(40);

        Segment.Attempt moved = Found.only(LogWriter.timed()
                .announce("U' " + WORDS)
                .turn("U' " + WORDS)
                .pause(8)
                .undo(WORDS)
                .reference(CubeState.SOLVED.apply(Turn.parse("U'"))));
        assertThat(moved.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(moved.scramble().start()).isEqualTo(Sequence.parse(WORDS).state());
    }

    @Test
    void shouldSayNobodyKnowsWhenTurnsWereLostAndTheCubeNeverReported() {
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn("R2 D2 F")
                .lose(2)
                .turn("L2 B U"));

        assertThat(attempt.outcome()).isEqualTo(Outcome.UNKNOWN_AFTER_GAP);
        assertThat(attempt.gaps()).containsExactly(new Segment.GapRecord(3, 2, false));
    }

    @Test
    void shouldKnowAgainWhenTheCubeReportsItsStateAfterTheLoss() {
        List<Turn> solution =
                Sequence.parse(WORDS).inverse().walk(Orientation.IDENTITY).turns();
        CubeState reported = Sequence.parse(WORDS).state().apply(solution.subList(0, 9));
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn(solution.subList(0, 7))
                .lose(2)
                .snapshot(reported)
                .turn(solution.subList(9, 20)));

        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.gaps()).containsExactly(new Segment.GapRecord(7, 2, true));
    }

    /** After a reconnection the turns go on before the cube's state is read: one loss, told twice. */
    @Test
    void shouldCountOneLossWhenTurnsComeBetweenItAndTheCubesState() {
        List<Turn> solution =
                Sequence.parse(WORDS).inverse().walk(Orientation.IDENTITY).turns();
        CubeState reported = Sequence.parse(WORDS).state().apply(solution.subList(0, 12));
        LogWriter lost = LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn(solution.subList(0, 7))
                .lose(2)
                .turn(solution.subList(9, 12));
        assertThat(Found.only(lost).gaps()).containsExactly(new Segment.GapRecord(7, 2, false));
        assertThat(Found.only(lost).outcome()).isEqualTo(Outcome.UNKNOWN_AFTER_GAP);

        Segment.Attempt attempt = Found.only(lost.snapshot(reported).turn(solution.subList(12, 20)));

        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.gaps()).containsExactly(new Segment.GapRecord(7, 2, true));
    }

    @Test
    void shouldBelieveTheReferenceWhenALossTurnsOutToHaveLostNothing() {
        List<Turn> solution =
                Sequence.parse(WORDS).inverse().walk(Orientation.IDENTITY).turns();
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn(solution.subList(0, 7))
                .lose(Event.Gap.UNKNOWN_COUNT)
                .turn(solution.subList(7, 20)));

        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.gaps()).hasSize(1);
    }

    /** Turns lost after the last one heard: of the attempt if it was still going on, else of nobody's. */
    @Test
    void shouldCountALossAtTheEndOnlyWhenTheCubeWasNotSolvedYet() {
        LogWriter solved = LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .undo(WORDS)
                .lose(4);
        LogWriter unsolved = LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn("R U")
                .lose(4);

        assertThat(Found.only(solved).gaps()).isEmpty();
        assertThat(Found.only(solved).outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(Found.only(unsolved).gaps()).containsExactly(new Segment.GapRecord(2, 4, false));
        assertThat(Found.only(unsolved).outcome()).isEqualTo(Outcome.UNKNOWN_AFTER_GAP);
    }

    @Test
    void shouldCallItAbandonedWhenTheCubeToldWhereItWasAfterTheLoss() {
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn("R U")
                .lose(4)
                .snapshot(Sequence.parse("R U F").state())
                .turn("D"));

        assertThat(attempt.outcome()).isEqualTo(Outcome.ABANDONED);
        assertThat(attempt.gaps()).containsExactly(new Segment.GapRecord(2, 4, true));
    }

    @Test
    void shouldAskTheTrackWhenNothingWasSaidOfHowItEnded() {
        LogWriter writer =
                LogWriter.timed().announce(WORDS).turn(WORDS).pause(8).undo(WORDS);
        assertThat(Found.only(writer).ruledOutcome()).isFalse();
        assertThat(Found.only(writer.rule("c1-20", Ruling.SET_ASIDE)).ruledOutcome())
                .isFalse();

        writer.rule("c1-20", Ruling.ABANDONED);
        assertThat(Found.only(writer).ruledOutcome()).isTrue();
        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.ABANDONED);
    }

    @Test
    void shouldFollowTheLastWordWhenVerdictsAreGiven() {
        LogWriter writer =
                LogWriter.timed().announce(WORDS).turn(WORDS).pause(8).turn("R U R'");
        writer.rule("c1-20", Ruling.SET_ASIDE).rule("c1-20", Ruling.SOLVED).rule("c1-99", Ruling.SET_ASIDE);
        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(Found.only(writer).ruledOutcome()).isTrue();
        assertThat(Found.only(writer).setAside()).isTrue();

        writer.rule("c1-20", Ruling.ABANDONED).rule("c1-20", Ruling.BACK_IN);
        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.ABANDONED);
        assertThat(Found.only(writer).setAside()).isFalse();
    }
}
