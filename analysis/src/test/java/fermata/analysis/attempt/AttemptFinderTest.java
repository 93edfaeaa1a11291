package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.MarkKind;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class AttemptFinderTest {
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";
    private static final String OTHER_WORDS = "R B' L2 U F2 D' R2 B U' L F R' D2 B2 L' U2 F' R D B";
    private static final int LENGTH = 20;

    @Test
    void shouldFindNothingWhenTheLogIsEmpty() {
        assertThat(AttemptFinder.find(new CaptureLog("c1", List.of()))).isEmpty();
    }

    @Test
    void shouldFixTheBoundaryWhereTheStateWasReachedWhenAScrambleIsAnnounced() {
        Segment.Attempt attempt = Found.only(
                LogWriter.timed().announce(WORDS).turn(WORDS).pause(9).undo(WORDS));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_STATE);
        assertThat(attempt.scramble().probability()).isEqualTo(1);
        assertThat(attempt.scramble().span()).isEqualTo(new Span(0, LENGTH));
        assertThat(attempt.scramble().start()).isEqualTo(Sequence.parse(WORDS).state());
        assertThat(attempt.solve()).isEqualTo(new Span(LENGTH, 2 * LENGTH));
        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(attempt.id()).isEqualTo("c1-20");
    }

    @Test
    void shouldBeginAtOnceWhenTheAnnouncedStateIsThereAlready() {
        CubeState scrambled = Sequence.parse(WORDS).state();
        Segment.Attempt attempt = Found.only(
                LogWriter.untimed().snapshot(scrambled).announce(WORDS).undo(WORDS));

        assertThat(attempt.scramble().span().isEmpty()).isTrue();
        assertThat(attempt.solve()).isEqualTo(new Span(0, LENGTH));
        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
    }

    @Test
    void shouldFindTheWordsInEachOf24HoldsWhenTheCubeWasHeldOtherwise() {
        for (Orientation hold : Orientation.all()) {
            List<Turn> turned = Sequence.parse(WORDS).walk(hold).turns();
            Segment.Attempt attempt = Found.only(LogWriter.timed()
                    .announce(WORDS)
                    .turn(turned)
                    .pause(9)
                    .turn(Sequence.parse(WORDS).inverse().walk(hold).turns()));

            assertThat(attempt.scramble().span().to()).isEqualTo(LENGTH);
            assertThat(attempt.scramble().hold()).isEqualTo(hold);
            assertThat(attempt.scramble().boundary())
                    .isEqualTo(hold == Orientation.IDENTITY ? Boundary.ANNOUNCED_STATE : Boundary.ANNOUNCED_WORDS);
        }
    }

    @Test
    void shouldFindTheWordsWhenTheCubeWasNotSolvedBefore() {
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .turn("R U F")
                .announce(WORDS)
                .turn(WORDS)
                .pause(9)
                .undo(WORDS)
                .undo("R U F"));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_WORDS);
        assertThat(attempt.scramble().span()).isEqualTo(new Span(3, 3 + LENGTH));
        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
    }

    @Test
    void shouldFindTheWordsWhenHalfTurnsCameAsQuartersAndAWrongTurnWasTakenBack() {
        String quarters = WORDS.replaceAll("([A-Z])2", "$1 $1");
        String corrected = quarters.replaceFirst("L D'", "L U U' D'");
        List<Turn> turned =
                Sequence.parse(corrected).walk(Orientation.ofLetters("RF")).turns();
        Segment.Attempt attempt = Found.only(LogWriter.timed()
                .announce(WORDS)
                .turn("U U'")
                .turn(turned)
                .pause(9)
                .turn(Sequence.parse(WORDS)
                        .inverse()
                        .walk(Orientation.ofLetters("RF"))
                        .turns()));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_WORDS);
        assertThat(attempt.scramble().span().to()).isEqualTo(2 + turned.size());
        assertThat(attempt.outcome()).isEqualTo(Outcome.SOLVED);
    }

    @Test
    void shouldInferTheBoundaryWithAProbabilityWhenTheScrambleIsMadeUp() {
        Segment.Attempt attempt =
                Found.only(LogWriter.timed().turn(WORDS).pause(9).undo(WORDS));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.INFERRED);
        assertThat(attempt.scramble().probability()).isGreaterThan(0.9).isLessThan(1);
        assertThat(attempt.solve()).isEqualTo(new Span(LENGTH, 2 * LENGTH));
    }

    @Test
    void shouldKeepTheAnnouncedWordsButInferWhenTheyWereNeverDone() {
        Segment.Attempt attempt = Found.only(
                LogWriter.timed().announce(WORDS).turn(OTHER_WORDS).pause(9).undo(OTHER_WORDS));

        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.INFERRED);
        assertThat(attempt.scramble().announced()).isEqualTo(WORDS);
    }

    @Test
    void shouldFindOnlyOtherTurningWhenSomebodyPlaysThroughSolvedStates() {
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .turn("R U R' U' R U R' U' R U R' U' R U R' U' R U R' U' R U R' U'")
                .pause(20)
                .turn("U U U U")
                .pause(9)
                .turn("R U R' U R U2 R'")
                .pause(9)
                .turn("R U2 R' U' R U' R'")
                .log());

        assertThat(segments).containsExactly(new Segment.OtherTurning(new Span(0, 42)));
    }

    @Test
    void shouldFindBothWhenTwoAttemptsStandBackToBack() {
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .turn(WORDS)
                .pause(8)
                .undo(WORDS)
                .pause(15)
                .turn(OTHER_WORDS)
                .pause(7)
                .undo(OTHER_WORDS)
                .log());

        assertThat(Found.attempts(segments)).extracting(Segment.Attempt::solve).containsExactly(span(1), span(3));
        assertThat(Found.attempts(segments))
                .extracting(Segment.Attempt::outcome)
                .containsOnly(Outcome.SOLVED);
    }

    @Test
    void shouldAbandonWhenANewScrambleIsAnnouncedBeforeItIsSolved() {
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn("R U R' U' F D L B R U")
                .pause(20)
                .announce(OTHER_WORDS)
                .turn(OTHER_WORDS)
                .pause(8)
                .undo(OTHER_WORDS)
                .log());

        assertThat(Found.attempts(segments))
                .extracting(Segment.Attempt::outcome)
                .containsOnly(Outcome.ABANDONED);
        assertThat(Found.attempts(segments))
                .extracting(attempt -> attempt.scramble().boundary())
                .containsExactly(Boundary.ANNOUNCED_STATE, Boundary.ANNOUNCED_WORDS);
    }

    @Test
    void shouldInferBothWhenAnAbandonedOneIsFollowedByAMadeUpScramble() {
        CubeState left =
                Sequence.parse(WORDS + " R U R' U' F D L B R U " + OTHER_WORDS).state();
        List<Turn> solution = Sequence.parse(WORDS + " R U R' U' F D L B R U " + OTHER_WORDS)
                .inverse()
                .walk(Orientation.IDENTITY)
                .turns();
        assertThat(left.apply(solution).isSolved()).isTrue();
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .turn(WORDS)
                .pause(8)
                .turn("R U R' U' F D L B R U")
                .pause(25)
                .turn(OTHER_WORDS)
                .pause(9)
                .turn(solution)
                .log());

        assertThat(Found.attempts(segments))
                .extracting(Segment.Attempt::outcome)
                .containsExactly(Outcome.ABANDONED, Outcome.SOLVED);
        assertThat(Found.attempts(segments).get(1).solve().from()).isEqualTo(50);
    }

    @Test
    void shouldAbandonWhenPracticeEnds() {
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .turn("R U R'")
                .mark(MarkKind.END, "")
                .turn("U D")
                .log());

        assertThat(Found.attempts(segments).get(0).outcome()).isEqualTo(Outcome.ABANDONED);
        assertThat(segments.get(1)).isEqualTo(new Segment.OtherTurning(new Span(23, 25)));
    }

    @Test
    void shouldCallAFidgetOtherTurningWhenItFollowsTheSolve() {
        List<Segment> segments = AttemptFinder.find(LogWriter.timed()
                .announce(WORDS)
                .turn(WORDS)
                .pause(8)
                .undo(WORDS)
                .pause(2)
                .turn("U U' U2 U2")
                .log());

        assertThat(Found.attempts(segments).get(0).solve()).isEqualTo(span(1));
        assertThat(segments.get(1)).isEqualTo(new Segment.OtherTurning(new Span(40, 44)));
    }

    @Test
    void shouldGoOnToTheLastTurnWhenTheSolverStoppedOneTurnOff() {
        String words = "U " + WORDS;
        LogWriter writer =
                LogWriter.timed().announce(words).turn(words).pause(8).undo(WORDS);
        assertThat(Found.only(writer).outcome()).isEqualTo(Outcome.ABANDONED);

        Segment.Attempt seen = Found.only(writer.pause(4).turn("U'"));
        assertThat(seen.outcome()).isEqualTo(Outcome.SOLVED);
        assertThat(seen.solve()).isEqualTo(new Span(21, 42));
    }

    @Test
    void shouldInferNothingWhenThereIsNoClock() {
        List<Segment> segments =
                AttemptFinder.find(LogWriter.untimed().turn(WORDS).undo(WORDS).log());

        assertThat(segments).containsExactly(new Segment.OtherTurning(new Span(0, 40)));
    }

    @Test
    void shouldKeepTheWordsAndGoOnWhenTheAnnouncedWordsCannotBeRead() {
        Segment.Attempt attempt = Found.only(
                LogWriter.timed().announce("the blue one").turn(WORDS).pause(9).undo(WORDS));

        assertThat(attempt.scramble().announced()).isEqualTo("the blue one");
        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.INFERRED);
    }

    @Test
    void shouldNotBeginAtASolvedCubeWhenTheAnnouncedWordsChangeNothing() {
        assertThat(AttemptFinder.find(
                        LogWriter.timed().announce("R R'").turn("U R").log()))
                .containsExactly(new Segment.OtherTurning(new Span(0, 2)));
    }

    /**
     * Play, every fourth interval a pause: the worst for the model. What is asked of the track is counted, so a slow
     * machine changes nothing. A model that looked at all pauses of the run would ask with their square.
     */
    @Tag("sweep")
    @Test
    void shouldAskOfTheTrackInProportionToItsTurnsWhenThousandsAreNeverSolved() {
        long ofHalf = asked(10_000);
        long ofAll = asked(20_000);

        // 48 a turn when this was written.
        assertThat(ofHalf).isLessThan(60 * 10_000L);
        assertThat(ofAll).isLessThan(60 * 20_000L).isLessThan(21 * ofHalf / 10);
    }

    private static long asked(int count) {
        Random random = new Random(7);
        LogWriter writer = LogWriter.timed();
        List<Turn> turns = new ArrayList<>();
        for (int turn = 0; turn < count; turn++) {
            turns.add(Turn.ofIndex(random.nextInt(18)));
        }
        for (int turn = 0; turn < turns.size(); turn += 4) {
            writer.turn(turns.subList(turn, turn + 4)).pause(2);
        }
        CountingTrack track = new CountingTrack(writer.log());
        List<Segment> segments = AttemptFinder.find(writer.log(), track);

        int next = 0;
        for (Segment segment : segments) {
            assertThat(segment.span().from()).isEqualTo(next);
            next = segment.span().to();
        }
        assertThat(next).isEqualTo(count);
        return track.asked;
    }

    /** Counts how often it is asked for a state or a pause. */
    private static final class CountingTrack extends Track {
        private long asked;

        private CountingTrack(CaptureLog log) {
            super(log);
        }

        @Override
        CubeState leftAt(int position) {
            asked++;
            return super.leftAt(position);
        }

        @Override
        CubeState reachedAt(int position) {
            asked++;
            return super.reachedAt(position);
        }

        @Override
        long pauseAt(int position) {
            asked++;
            return super.pauseAt(position);
        }
    }

    private static Span span(int part) {
        return new Span(part * LENGTH, (part + 1) * LENGTH);
    }
}
