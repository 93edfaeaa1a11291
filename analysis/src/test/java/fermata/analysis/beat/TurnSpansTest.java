package fermata.analysis.beat;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TurnSpansTest {
    @Test
    void shouldFindADoubleWhenAHalfTurnIsHeardAsTwoQuarters() {
        assertThat(find("R U U R'", 200_000)).containsExactly(span(TurnSpan.Kind.DOUBLE, 1, 3));
    }

    @Test
    void shouldFindASliceOnlyWhenBothFacesMoveAtOnce() {
        assertThat(find("U R L' U", 30_000)).containsExactly(span(TurnSpan.Kind.SLICE, 1, 3));
        assertThat(find("U R L' U", 200_000)).isEmpty();
        assertThat(find("U R L U", 30_000)).isEmpty();
    }

    @Test
    void shouldFindOneSlipWhenATurnIsTakenBackOrOvershot() {
        assertThat(find("R U F F' U", 200_000)).containsExactly(span(TurnSpan.Kind.SLIP, 2, 4));
        assertThat(find("R U U U' R", 200_000)).contains(span(TurnSpan.Kind.SLIP, 2, 4));
    }

    @Test
    void shouldCountASlipOnceWhenItCascadesThroughSeveralTurns() {
        assertThat(find("R F U U' F' D D' R", 200_000)).containsExactly(span(TurnSpan.Kind.SLIP, 1, 7));
    }

    @Test
    void shouldCallItNoSlipWhenAStageWasFinishedInBetween() {
        assertThat(find("R U R' R U", 200_000, 3)).isEmpty();
    }

    private static TurnSpan span(TurnSpan.Kind kind, int from, int to) {
        return new TurnSpan(kind, new Span(from, to));
    }

    private static List<TurnSpan> find(String words, long apartMicros, Integer... starts) {
        List<TurnRecord> turns = new ArrayList<>();
        for (String word : words.split(" ")) {
            turns.add(new TurnRecord(turns.size(), turns.size() * apartMicros, Turn.parse(word), TurnSource.HEARD));
        }
        return TurnSpans.find(turns, Set.of(starts));
    }
}
