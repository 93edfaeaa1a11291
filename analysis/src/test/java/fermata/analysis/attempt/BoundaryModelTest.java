package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Event;
import fermata.decoder.notation.Sequence;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The odds as the model's javadoc states them, worked out apart from it: first by hand, where there is one reading, and
 * by a few lines of another language, that list all readings, where there are more.
 */
class BoundaryModelTest {
    /** 20 turns, none beside one of its own face; 18 pieces leave home. */
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";

    private static final String OTHER_WORDS = "R B' L2 U F2 D' R2 B U' L F R' D2 B2 L' U2 F' R D B";
    private static final String LONG_WORDS = "L' R2 B2 U2 B U' D F L' R2 L B' U2 R2 L' F B2 L D2 R B' D' B2 L' B' F";

    private final LogWriter writer = LogWriter.timed();
    private int turns;

    private BoundaryModelTest turn(String words) {
        writer.turn(words);
        turns += words.split(" ").length;
        return this;
    }

    private BoundaryModelTest undo(String words) {
        return turn(Sequence.parse(words).inverse().toString());
    }

    /** Between the turns before and after it; a turn by itself takes 0.3 s. */
    private BoundaryModelTest interval(double seconds) {
        writer.pause(seconds - 0.3);
        return this;
    }

    private Optional<BoundaryModel.Found> find() {
        return BoundaryModel.find(new Track(writer.log()), 0, turns);
    }

    private static String part(String words, int from, int to) {
        return String.join(" ", Arrays.asList(words.split(" ")).subList(from, to));
    }

    private static void isAbout(Optional<BoundaryModel.Found> found, int from, int to, double probability) {
        assertThat(found).hasValueSatisfying(reading -> {
            assertThat(reading.from()).isEqualTo(from);
            assertThat(reading.to()).isEqualTo(to);
            assertThat(reading.probability()).isCloseTo(probability, within(1e-9));
        });
    }

    /** Two pieces are at home: e^-0.8; play that comes back solved: e^-8. So 1 / (1 + e^-7.2). */
    @Test
    void shouldWeighAScrambleOfTheUsualLengthAgainstPlayThatEndsSolved() {
        isAbout(turn(WORDS).interval(8).undo(WORDS).find(), 0, 20, 1 / (1 + Math.exp(-7.2)));
    }

    /** At 20 s the gap is e^-(ln(20 / 8)^2 / 2), and idling, as which play takes it, is at its likeliest. */
    @Test
    void shouldWeighAPauseByTheRoleThatItHasInEachReading() {
        double gap = -Math.log(2.5) * Math.log(2.5) / 2;

        isAbout(turn(WORDS).interval(20).undo(WORDS).find(), 0, 20, 1 / (1 + Math.exp(-7.2 - gap)));
    }

    /** A cube left unsolved: e^-4. Of 26 turns, six more than usual: 1 / (1 + 1); one piece at home: e^-0.4. */
    @Test
    void shouldWeighTheLengthAndHowFarFromSolvedTheCubeIs() {
        double odds = 0.5 * Math.exp(-0.4 + 4);

        isAbout(turn(LONG_WORDS).interval(8).turn(OTHER_WORDS).find(), 0, 26, odds / (1 + odds));
    }

    /** All pieces away from home; begun unsolved: e^-1. Solved in the end or not decides whether play is likelier. */
    @Test
    void shouldFindNothingOnACubeThatNeitherWasNorGetsSolved() {
        writer.snapshot(Sequence.parse("R U F").state());
        turn(WORDS).interval(8);

        LogWriter solved = LogWriter.timed().snapshot(Sequence.parse("R U F").state());
        solved.turn(WORDS).pause(7.7).undo(WORDS).turn("F' U' R'");
        isAbout(BoundaryModel.find(new Track(solved.log()), 0, 43), 0, 20, 1 / (1 + Math.exp(-7)));
        assertThat(turn(OTHER_WORDS).find()).isEmpty();
    }

    @Test
    void shouldAddUpTheReadingsWhenThereIsARestWithinTheScramble() {
        turn(part(WORDS, 0, 10)).interval(1.5).turn(part(WORDS, 10, 20)).interval(8);

        isAbout(turn(OTHER_WORDS).find(), 0, 20, 0.9557292716567696);
    }

    @Test
    void shouldLetTheScrambleBeginWhereTheSolverIdled() {
        turn(part(OTHER_WORDS, 0, 12)).interval(20).turn(WORDS).interval(8);

        isAbout(turn(OTHER_WORDS).find(), 12, 32, 0.570679494235691);
    }

    @Test
    void shouldTakePausesBeforeTheScrambleForWhatFitsThemBest() {
        turn(part(OTHER_WORDS, 0, 6)).interval(2).turn(part(OTHER_WORDS, 6, 12)).interval(12);

        isAbout(turn(WORDS).interval(8).turn(OTHER_WORDS).find(), 12, 32, 0.5173788687265463);
    }

    @Test
    void shouldCountARestWithinTheAttemptOnBothSides() {
        turn(part(OTHER_WORDS, 0, 12)).interval(20).turn(WORDS).interval(8);
        turn(part(OTHER_WORDS, 0, 9)).interval(3);

        isAbout(turn(part(OTHER_WORDS, 9, 20)).find(), 12, 32, 0.5470056509685016);
    }

    /** An attempt begun at turn 20 is dropped at 32, after a pause of so long, for a scramble up to 52. */
    @ParameterizedTest
    @CsvSource({"25, 9, 0.9916751848073934", "5, 3, 0"})
    void shouldFindANewScrambleWithinAnAttemptOnlyWhenItIsLikelierThanToGoOn(
            double idleSeconds, double gapSeconds, double probability) {
        turn(WORDS).interval(8).turn(part(OTHER_WORDS, 0, 12)).interval(idleSeconds);
        turn(OTHER_WORDS).interval(gapSeconds).undo(WORDS);

        Optional<BoundaryModel.Found> found = BoundaryModel.findWithin(new Track(writer.log()), 20, turns);

        if (probability == 0) {
            assertThat(found).isEmpty();
        } else {
            isAbout(found, 32, 52, probability);
        }
    }

    @Test
    void shouldCountTheRestsOfAnAttemptThatIsDropped() {
        turn(WORDS).interval(8).turn(part(OTHER_WORDS, 0, 6)).interval(2);
        turn(part(OTHER_WORDS, 6, 12))
                .interval(25)
                .turn(OTHER_WORDS)
                .interval(9)
                .undo(WORDS);

        isAbout(BoundaryModel.findWithin(new Track(writer.log()), 20, turns), 32, 52, 0.9916753072940777);
    }

    /** Eight turns a part, and twelve pieces away from home, are the least; a turn and back is two more. */
    @ParameterizedTest
    @CsvSource({
        // scramble, solve or nothing for its undoing, found
        "F B' L' U D U2 L2 F2, '', true",
        "D F2 B' L' B2 L' R', R L B2 L B F2 D' U U', false",
        "D F2 B' L' B2 L' R' U U', R L B2 L B F2 D', false",
        "R2 B R' L F2 L' R B', '', true",
        "R F L' D L F' B2 R', '', false"
    })
    void shouldAskForEightTurnsEachAndTwelvePiecesAwayFromHome(String scramble, String solve, boolean isFound) {
        turn(scramble).interval(8);

        assertThat((solve.isEmpty() ? undo(scramble) : turn(solve)).find().isPresent())
                .isEqualTo(isFound);
    }

    /** Only the last 400 turns are looked at, and then the run's own beginning is none of theirs. */
    @ParameterizedTest
    @CsvSource({"340, true", "360, true", "361, false"})
    void shouldLookAtTheLastFourHundredTurns(int turnsBetween, boolean isSeen) {
        turn(WORDS).interval(8);
        for (int pair = 0; pair < turnsBetween / 2; pair++) {
            turn("U U'");
        }
        if (turnsBetween % 2 == 1) {
            turn("U");
        }
        turn(part(OTHER_WORDS, 0, 20));

        assertThat(find().isPresent()).isEqualTo(isSeen);
    }

    @Test
    void shouldFindNothingWhenNothingPaused() {
        assertThat(turn(WORDS).undo(WORDS).find()).isEmpty();
        LogWriter untimed = LogWriter.untimed().turn(WORDS).pause(9).undo(WORDS);
        assertThat(untimed.log().turns().get(0).atMicros()).isEqualTo(Event.NO_TIME);
        assertThat(BoundaryModel.find(new Track(untimed.log()), 0, 40)).isEmpty();
    }

    /** A second is a pause, less is none. */
    @ParameterizedTest
    @CsvSource({"1, true", "0.999999, false"})
    void shouldCallOneSecondAPause(double seconds, boolean isPause) {
        assertThat(turn(WORDS).interval(seconds).undo(WORDS).find().isPresent()).isEqualTo(isPause);
    }
}
