package fermata.analysis.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import fermata.analysis.hold.InferredRotation;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatedHandTest {
    /** Worked by hand: after x the centre F is up; r is heard as L; a slice as two turns, in either order. */
    @ParameterizedTest
    @CsvSource({
        "R U R',            R U R',       R U R',       UF UF UF",
        "x U,               F,            U,            FD",
        "r U,               L F,          r U,          UF FD",
        "M U',              R L' B',      M M U',       UF UF BU",
        "M U',              L' R B',      M M U',       UF UF BU",
        "U2,                U U,          U U,          UF UF",
        "U2,                U' U',        U' U',        UF UF",
        "U U,               U2,           U2,           UF",
        "r2 U,              L L D,        r r U,        UF FD DB",
        "U2 D',             U D' U,       U D' U,       UF UF UF",
        "z U R U' z' R,     L U L' R,     U R U' R,     LF LF LF UF",
    })
    void shouldSayMoveAndHoldOfEveryHeardTurnWhenTheWordsMakeThem(
            String words, String heard, String moves, String holds) {
        StatedHand outcome = StatedHand.of(Sequence.parse(words), turns(heard));

        assertThat(outcome).isInstanceOf(StatedHand.Agrees.class);
        HandReading reading = ((StatedHand.Agrees) outcome).reading();
        assertThat(written(reading)).isEqualTo(moves);
        assertThat(reading.turns().stream().map(turn -> turn.hold().letters()).collect(Collectors.joining(" ")))
                .isEqualTo(holds);
        assertThat(reading.stated()).isTrue();
        assertThat(reading.turns())
                .allSatisfy(turn -> assertThat(turn.probability()).isEqualTo(1));
    }

    @ParameterizedTest
    @CsvSource({
        "R U R',   R U R,    2, R,  R'",
        "R U,      R U F,    2, F,  ''",
        "R U F,    R U,      2, '', F",
        "x U,      U,        0, U,  F",
        "U2 R,     U R,      0, U,  U2",
        "U R,      U2 R,     0, U2, U",
        "R L F,    L F R,    1, F,  R",
        "'',       R,        0, R,  ''",
    })
    void shouldNameTheFirstTurnThatDiffers(String words, String heard, int turn, String was, String said) {
        assertThat(StatedHand.of(Sequence.parse(words), turns(heard)))
                .isEqualTo(new StatedHand.Differs(turn, was, said));
    }

    @Test
    void shouldPutRotationsBeforeTheTurnsTheyComeBefore() {
        List<Turn> made = Sequence.parse("x2 R y x U z z' F y' D x")
                .walk(Orientation.IDENTITY)
                .turns();
        StatedHand.Agrees agrees = (StatedHand.Agrees) StatedHand.of(Sequence.parse("x2 R y x U z z' F y' D x"), made);
        assertThat(agrees.reading().rotations())
                .extracting(InferredRotation::beforeTurn, one -> one.rotation().word())
                .containsExactly(
                        tuple(
                                1,
                                Orientation.turning(Face.U, 1)
                                        .then(Orientation.turning(Face.R, 1))
                                        .word()),
                        tuple(3, "y'"));
    }

    /** Any words agree with what they make themselves, half turns heard whole or in quarters. */
    @Test
    void shouldAgreeWithItselfWhateverTheWords() {
        SplittableRandom random = new SplittableRandom(11);
        String[] letters = {"U", "R", "F", "D", "L", "B", "u", "r", "f", "d", "l", "b", "M", "E", "S", "x", "y", "z"};
        for (int round = 0; round < 300; round++) {
            StringBuilder words = new StringBuilder("R");
            for (int move = 0; move < 25; move++) {
                words.append(' ')
                        .append(letters[random.nextInt(letters.length)])
                        .append(new String[] {"", "2", "'"}[random.nextInt(3)]);
            }
            Sequence sequence = Sequence.parse(words.toString());
            List<CoreStep> steps = sequence.walk(Orientation.IDENTITY).steps();
            List<Turn> heard = new ArrayList<>();
            for (CoreStep step : steps) {
                if (step.turn().quarters() == 2 && random.nextBoolean()) {
                    Turn quarter = Turn.of(step.turn().face(), random.nextBoolean() ? 1 : 3);
                    heard.add(quarter);
                    heard.add(quarter);
                } else {
                    heard.add(step.turn());
                }
            }

            StatedHand outcome = StatedHand.of(sequence, heard);

            // Quarters heard apart may run together with a half turn beside them; then the words are ambiguous.
            if (!runsTogether(steps)) {
                assertThat(outcome).as("round %d: %s", round, words).isInstanceOf(StatedHand.Agrees.class);
                List<MadeTurn> made = ((StatedHand.Agrees) outcome).reading().turns();
                for (int turn = 0; turn < heard.size(); turn++) {
                    Face face = heard.get(turn).face();
                    assertThat(made.get(turn).move().turns(made.get(turn).hold()))
                            .as("round %d, turn %d: %s", round, turn, words)
                            .anyMatch(core -> core.face() == face);
                }
            }
        }
    }

    private static boolean runsTogether(List<CoreStep> steps) {
        for (int step = 1; step < steps.size(); step++) {
            for (int before = step - 1; before >= 0; before--) {
                if (!steps.get(before).turn().commutesWith(steps.get(step).turn())) {
                    break;
                }
                if (steps.get(before).turn().face() == steps.get(step).turn().face()) {
                    return true;
                }
            }
        }
        return false;
    }

    private static String written(HandReading reading) {
        return reading.turns().stream().map(turn -> turn.move().written()).collect(Collectors.joining(" "));
    }

    static List<Turn> turns(String words) {
        return words.isBlank()
                ? List.of()
                : List.of(words.strip().split("\\s+")).stream().map(Turn::parse).toList();
    }
}
