package fermata.analysis.hand;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.hold.sequence.LearnedSequence;
import fermata.analysis.hold.sequence.LearnedSequences;
import fermata.decoder.cube.Face;
import fermata.rehearsal.character.CuberHabits;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.Handling;
import fermata.rehearsal.character.LeftSide;
import fermata.rehearsal.character.Pace;
import fermata.rehearsal.character.Pauses;
import fermata.rehearsal.character.SensorStyle;
import fermata.rehearsal.truth.CuberHand;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Evenings of characters and of a seed that nothing was chosen on. What is reached proves the machinery, not the world:
 * sensor, hand and solver are made up.
 */
@Tag("proof")
class RehearsedHandsProofTest {
    private static final long SEED = 2026;
    private static final int SOLVES = 60;
    private static final RehearsedHands.Score NOTHING = new RehearsedHands.Score(0, 0, 0, 0);

    /** Tilts before it must, often widens, has own ways for a few cases. */
    private static final Handling OF_MATE =
            new Handling(LeftSide.TILTED, true, true, 0.4, Set.of("10", "16", "38", "57", "Jb", "Rb", "Gd"));

    /** Hardly widens, turns the held side where it is. */
    private static final Handling OF_PILOT =
            new Handling(LeftSide.IN_PLACE, false, false, 0.1, Set.of("21", "54", "Ub", "H"));

    /** Left hand, any colour of cross, quick. */
    private static final CuberStyle MATE = new CuberStyle(
            "mate",
            CuberHand.LEFT,
            new CuberHabits(List.of(Face.values()), 3, false, false, 0.006, OF_MATE),
            new Pace(125_000, 215_000, 240_000, 0.75, 0.3, 0.002),
            new Pauses(0.4, 550_000, 500_000, 700_000, 260_000, 150_000, 0.4));

    /** Right hand, yellow cross, slow, two looks. */
    private static final CuberStyle PILOT = new CuberStyle(
            "pilot",
            CuberHand.RIGHT,
            new CuberHabits(List.of(Face.D), 1, true, false, 0.012, OF_PILOT),
            new Pace(210_000, 360_000, 400_000, 0.85, 0.32, 0.004),
            new Pauses(0.7, 1_100_000, 900_000, 1_000_000, 450_000, 260_000, 0.4));

    private static final List<CuberStyle> STRANGERS = List.of(MATE, PILOT);

    @Test
    void shouldReadNearlyEveryHoldWhenTheCubeTellsHowItLies() {
        RehearsedHands.Score score = all(Optional.of(SensorStyle.usual()));

        assertThat(score.share()).as(score.toString()).isGreaterThanOrEqualTo(0.995);
    }

    private static RehearsedHands.Score all(Optional<SensorStyle> sensor) {
        RehearsedHands.Score all = NOTHING;
        for (CuberStyle stranger : STRANGERS) {
            RehearsedHands.Score score =
                    RehearsedHands.of(stranger, SEED, SOLVES, sensor).score();
            System.out.println(
                    "holds of the " + stranger.name() + (sensor.isPresent() ? ", sensed: " : ", by times: ") + score);
            all = all.and(score);
        }
        return all;
    }

    /** No bound: what was asked for, 0.97, is not reached (docs/holds.md says why); it must still beat a guess. */
    @Test
    void shouldSayHowManyHoldsAreReadFromTurnsAndTimesAlone() {
        RehearsedHands.Score score = all(Optional.empty());

        assertThat(score.share()).as(score.toString()).isGreaterThan(1.0 / 6);
    }

    /**
     * Likewise, once the solver has typed the last-layer sequences and set some solves right, the last of another
     * evening, the others of which were left as they were read. No bound but that it must help.
     */
    @ParameterizedTest
    @CsvSource({"5, 0", "10, 0", "20, 0", "40, 0", "5, 80", "10, 80", "20, 80", "40, 80"})
    void shouldReadMoreHoldsOnceTheSolverHasSetSomeSolvesRight(int corrected, int others) {
        RehearsedHands.Score all = NOTHING;
        for (CuberStyle stranger : STRANGERS) {
            RehearsedHands evening = RehearsedHands.of(stranger, SEED, SOLVES, Optional.empty());
            RehearsedHands.Score score = evening.score(
                    stranger, RehearsedHands.of(stranger, SEED + 1, corrected + others, Optional.empty()), corrected);
            System.out.println("holds of the " + stranger.name() + ", by times, " + corrected + " solves set right, "
                    + others + " as they were read: " + score);
            assertThat(score.share()).isGreaterThan(evening.score().share());
            all = all.and(score);
        }
        System.out.println("both, " + corrected + " solves set right, " + others + " as they were read: " + all);
    }

    /**
     * Likewise, once the solves of another evening repeat last-layer sequences that nobody set right or typed. They
     * teach little (docs/holds.md says why): it must not harm, and of what is called sure nine in ten must be so.
     */
    @ParameterizedTest
    @ValueSource(ints = {50, 200})
    void shouldNotReadFewerHoldsByWhatTheLogRepeats(int solves) {
        int sure = 0;
        int right = 0;
        for (CuberStyle stranger : STRANGERS) {
            RehearsedHands evening = RehearsedHands.of(stranger, SEED, SOLVES, Optional.empty());
            RehearsedHands log = RehearsedHands.of(stranger, SEED + 1, solves, Optional.empty());
            LearnedSequences learned = log.learned();
            List<String> called = learned.all().stream()
                    .filter(LearnedSequence::isSure)
                    .map(LearnedSequence::words)
                    .toList();
            List<String> turned =
                    log.repeated().all().stream().map(LearnedSequence::words).toList();
            sure += called.size();
            right += (int) called.stream().filter(turned::contains).count();
            Map<String, RehearsedHands.Score> before = evening.scores(LearnedSequences.NONE);
            Map<String, RehearsedHands.Score> after = evening.scores(learned);
            System.out.println("holds of the " + stranger.name() + ", by times: " + before);
            System.out.println("by what " + solves + " solves repeat: " + after);
            assertThat(after.get("all").share())
                    .isGreaterThanOrEqualTo(before.get("all").share());
        }
        System.out.println(
                right + " of " + sure + " sequences right that were called sure after " + solves + " solves");
        assertThat(right).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * sure));
    }

    @Test
    void shouldSayHowAPoorSensorDoes() {
        RehearsedHands.Score score = all(Optional.of(SensorStyle.poor()));

        assertThat(score.share()).as(score.toString()).isGreaterThan(1.0 / 6);
    }
}
