package fermata.analysis.track;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the place where the turning stops tells of turns lost. */
class LostTurnsTest {
    @Test
    void shouldSayNothingWhenOnlyOneAxisWasTurnedSince() {
        // One turn from solved a turn was lost, and then two of the same layer came: which stop was the solved one?
        CubeState before = CubeState.of(Turn.parse("U"));
        LostTurns lost = LostTurns.from(before, 1);
        CubeState tracked = before;
        for (Turn turn : List.of(Turn.parse("U"), Turn.parse("D"))) {
            lost.hear(turn);
            tracked = tracked.apply(turn);
            assertThat(lost.stop(tracked, CubeState.SOLVED)).isEmpty();
        }
    }

    @Test
    void shouldGiveTheChangeThatMakesTheStatesRight() {
        List<Turn> turns =
                Sequence.parse("R U F' L D2").walk(Orientation.IDENTITY).turns();
        CubeState before = CubeState.SOLVED.apply(turns).inverse();
        LostTurns lost = LostTurns.from(before, 1);
        List<Turn> heard = new ArrayList<>(turns.subList(1, 5));
        heard.forEach(lost::hear);

        Optional<CubeState> change = lost.stop(before.apply(heard), CubeState.SOLVED);

        assertThat(change.orElseThrow().then(before)).isEqualTo(before.apply(turns.get(0)));
    }
}
