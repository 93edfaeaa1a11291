package fermata.daemon.live;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScrambleFollowerTest {
    private static final String WORDS = "R U2 F' D L B2";

    @ParameterizedTest
    @CsvSource({
        // made so far, done, half, mending
        "'',             0, false, ''",
        "R U2,           2, false, ''",
        "R U,            1, true,  ''",
        "R U',           1, true,  ''",
        "R U U,          2, false, ''",
        "R2,             0, false, R'",
        "R',             0, false, R2",
        "F,              0, false, F'",
        "F L2,           0, false, L2 F'",
        "R U2 F,         2, false, F2",
        "R U2 F' L,      3, false, L'",
        "R U2 F' L D,    3, false, D' L'",
        "R U2 F' L D B,  3, false, B' D' L'",
        "F B F',         0, false, B'",
        "F B F' B',      0, false, ''"
    })
    void shouldKnowThePlaceAndWhatMends(String made, int done, boolean half, String mending) {
        ScrambleFollower follower = follow(WORDS, made);

        assertThat(follower.place())
                .isEqualTo(new ScramblePlace(done, half, made.isEmpty() ? List.of() : turnsOf(mending), false));
    }

    @Test
    void shouldTakeOppositeFacesInEitherOrder() {
        assertThat(follow("U D R", "D U").place().done()).isEqualTo(2);
    }

    @Test
    void shouldLeadBackWhateverWasTurned() {
        SplittableRandom random = new SplittableRandom(11);
        for (int round = 0; round < 500; round++) {
            ScrambleFollower follower = new ScrambleFollower(HandDriven.scramble(WORDS), Optional.of(CubeState.SOLVED));
            List<Turn> turns = new ArrayList<>(HandDriven.turns(WORDS).subList(0, random.nextInt(6)));
            for (int wrong = random.nextInt(1, 6); wrong > 0; wrong--) {
                turns.add(Turn.ofIndex(random.nextInt(18)));
            }
            CubeState state = turnAll(follower, CubeState.SOLVED, turns);
            ScramblePlace off = follower.place();
            turnAll(follower, state, off.mending());

            assertThat(off.astray()).as("round %d: %s", round, turns).isFalse();
            if (!off.half()) {
                assertThat(follower.place().mending())
                        .as("round %d: %s", round, turns)
                        .isEmpty();
                assertThat(follower.place().done()).as("round %d", round).isBetween(off.done(), off.done() + 1);
            }
        }
    }

    @Test
    void shouldGoAstrayWhenSomethingElseIsTurnedAndComeBackWhenTheCubeIsSolved() {
        String other = "U R U' L' U R' U' L F B";
        ScrambleFollower follower = follow(WORDS, other);
        assertThat(follower.place().astray()).isTrue();

        CubeState state = CubeState.SOLVED.apply(HandDriven.turns(other));
        List<Turn> back = new ArrayList<>(
                HandDriven.turns(other).stream().map(Turn::inverse).toList());
        Collections.reverse(back);
        turnAll(follower, state, back);

        assertThat(follower.place()).isEqualTo(new ScramblePlace(0, false, List.of(), false));
    }

    @Test
    void shouldBeDoneWithTheLastTurnOnly() {
        assertThat(follow(WORDS, "R U2 F' D L B").isDone()).isFalse();
        assertThat(follow(WORDS, "R U2 F' D L B B").isDone()).isTrue();
    }

    private static ScrambleFollower follow(String words, String made) {
        ScrambleFollower follower = new ScrambleFollower(HandDriven.scramble(words), Optional.of(CubeState.SOLVED));
        turnAll(follower, CubeState.SOLVED, turnsOf(made));
        return follower;
    }

    private static List<Turn> turnsOf(String words) {
        return words.isBlank() ? List.of() : HandDriven.turns(words);
    }

    private static CubeState turnAll(ScrambleFollower follower, CubeState from, List<Turn> turns) {
        CubeState state = from;
        for (Turn turn : turns) {
            state = state.apply(turn);
            follower.turned(turn, Optional.of(state));
        }
        return state;
    }
}
