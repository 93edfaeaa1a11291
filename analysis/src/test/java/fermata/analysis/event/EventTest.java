package fermata.analysis.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.Turn;
import fermata.decoder.stream.TurnSource;
import java.util.List;
import org.junit.jupiter.api.Test;

class EventTest {
    private static final Origin ORIGIN = new Origin("galley cube", "the ferry cook", Hand.of("left"));

    @Test
    void shouldCountTurnsAloneWhenRawIndexesAreAsked() {
        Event turn = turned(10);
        CaptureLog log =
                new CaptureLog("c1", List.of(new Event.Mark(MarkKind.NOTE, "fog", ORIGIN, 0), turn, turned(20)));

        assertThat(log.turns()).containsExactly((Event.Turned) turn, turned(20));
    }

    @Test
    void shouldRefuseWhenSomeTurnsHaveATimeAndOthersNone() {
        assertThatThrownBy(() -> new CaptureLog("c1", List.of(turned(10), turned(Event.NO_TIME))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("capture c1: turn 1 has no time");
    }

    @Test
    void shouldNameTheValueWhenAnEventIsImpossible() {
        assertThatThrownBy(() -> new Event.Gap(0, ORIGIN, 5)).hasMessageContaining("turnsLost 0");
        assertThatThrownBy(() -> new Event.Mark(MarkKind.SCRAMBLE, " ", ORIGIN, 5))
                .hasMessageContaining("words");
        assertThatThrownBy(() -> new Event.Verdict("", Ruling.SOLVED, ORIGIN, 5))
                .hasMessageContaining("attempt");
        assertThatThrownBy(() -> new Origin("", "cook", Hand.LEFT)).hasMessageContaining("cube");
        assertThatThrownBy(() -> Hand.of("both")).hasMessageContaining("\"both\"");
    }

    @Test
    void shouldReadBackEveryHandWhenWritten() {
        assertThat(Hand.values())
                .allSatisfy(hand -> assertThat(Hand.of(hand.written())).isEqualTo(hand));
    }

    private static Event.Turned turned(long atMicros) {
        return new Event.Turned(Turn.parse("R"), TurnSource.HEARD, ORIGIN, atMicros);
    }
}
