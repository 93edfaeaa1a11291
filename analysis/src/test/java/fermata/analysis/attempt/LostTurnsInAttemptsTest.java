package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is made of lost turns that the cube itself never explains. */
class LostTurnsInAttemptsTest {
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";
    private static final String OTHER_WORDS = "R B' L2 U F2 D' R2 B U' L F R' D2 B2 L' U2 F' R D B";
    private static final List<Turn> SOLUTION =
            Sequence.parse(WORDS).inverse().walk(Orientation.IDENTITY).turns();

    @Test
    void shouldTakeAnAttemptForSolvedWhereverItsOneTurnWasLost() {
        for (int at = 0; at < SOLUTION.size() - 2; at++) {
            List<Segment> segments =
                    AttemptFinder.find(twoAttemptsLosing(1, at, 1).log());

            assertThat(Found.attempts(segments))
                    .as("lost turn %d", at)
                    .extracting(Segment.Attempt::solve)
                    .containsExactly(new Span(20, 39), new Span(59, 79));
            assertThat(Found.attempts(segments))
                    .extracting(Segment.Attempt::outcome)
                    .containsOnly(Outcome.SOLVED);
            assertThat(Found.attempts(segments).get(0).gaps()).containsExactly(new Segment.GapRecord(at, 1, true));
        }
    }

    @Test
    void shouldTakeAnAttemptForSolvedWhenTwoTurnsOrNobodyKnowsHowManyWereLost() {
        for (int said : new int[] {2, Event.Gap.UNKNOWN_COUNT}) {
            List<Segment> segments =
                    AttemptFinder.find(twoAttemptsLosing(2, 7, said).log());

            assertThat(Found.attempts(segments))
                    .extracting(Segment.Attempt::outcome)
                    .containsExactly(Outcome.SOLVED, Outcome.SOLVED);
        }
    }

    @Test
    void shouldKnowWhereTheAttemptBeganWhenTheTurnWasLostInTheScramble() {
        List<Turn> scramble = Sequence.parse(WORDS).walk(Orientation.IDENTITY).turns();
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn(scramble.subList(0, 5))
                .lose(1)
                .turn(scramble.subList(6, 20))
                .pause(8)
                .turn(SOLUTION));

        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_STATE);
        assertThat(attempt.scramble().start()).isEqualTo(Sequence.parse(WORDS).state());
        assertThat(attempt.gaps()).isEmpty();
    }

    /** Five turns are too many to think of; but where the cube stops time and again it is solved. */
    @Test
    void shouldFindItsWayBackWhenTheCubeStopsWhereItStoppedBefore() {
        List<Turn> other =
                Sequence.parse(OTHER_WORDS).walk(Orientation.IDENTITY).turns();
        LogWriter writer = LogWriter.timed().turn(WORDS).pause(8).turn(SOLUTION.subList(0, 4));
        writer.lose(5).turn(SOLUTION.subList(9, 20));
        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.UNKNOWN_AFTER_GAP);

        writer.pause(20).turn(other).pause(9).undo(OTHER_WORDS);

        assertThat(Found.attempts(AttemptFinder.find(writer.log())))
                .extracting(Segment.Attempt::outcome)
                .containsExactly(Outcome.SOLVED, Outcome.SOLVED);
    }

    @Test
    void shouldNotTakeADrillOnAMixedCubeForASolve() {
        LogWriter writer = LogWriter.timed().turn(WORDS).pause(8).turn(SOLUTION.subList(0, 4));
        writer.lose(5).turn(SOLUTION.subList(9, 12));
        for (int time = 0; time < 12; time++) {
            writer.pause(2).turn("R U R' U R U2 R'");
        }

        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.UNKNOWN_AFTER_GAP);
    }

    /** Two attempts that nobody announced; of the first one's solve {@code count} turns are lost. */
    private static LogWriter twoAttemptsLosing(int count, int at, int said) {
        return LogWriter.timed()
                .turn(WORDS)
                .pause(8)
                .turn(SOLUTION.subList(0, at))
                .lose(said)
                .turn(SOLUTION.subList(at + count, 20))
                .pause(20)
                .turn(OTHER_WORDS)
                .pause(9)
                .undo(OTHER_WORDS);
    }
}
