package fermata.analysis.track;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.TurnSource;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each order is worked out by hand: t a turn, a number so many lost, ? an unknown number of them, S the state. */
class StreamOrderTest {
    private static final Origin COOK = new Origin("galley cube", "cook", Hand.LEFT);

    private final StreamOrder order = new StreamOrder();
    private long now;

    @ParameterizedTest
    @CsvSource({
        "t t t,       0,  '',    t t t S",
        "t t t,       -2, '',    t S t t",
        "t t t,       -3, '',    S t t t",
        "t t t,       -4, '',    t t t",
        "t 4 t t,     -2, '',    t 4 S t t",
        "t 4 t t,     -3, '',    t 3 S 1 t t",
        "t 4 t t,     -5, '',    t 1 S 3 t t",
        "t 4 t t,     -6, '',    t S 4 t t",
        "t 4 t t,     -7, '',    S t 4 t t",
        "t 4 t 2 t,   -5, '',    t 3 S 1 t 2 t",
        "t ? t t,     -2, '',    t ? S t t",
        "t ? t t,     -3, '',    t ? t t",
        "t,           2,  t t t, t t t S t",
        "t,           2,  t 3 t, t t 1 S 2 t",
        "t,           2,  2 t,   t 2 S t",
        "t,           2,  5 t,   t 2 S 3 t",
        "t,           2,  t ? t, t t ? t",
    })
    void shouldPutAStateExactlyBetweenTheTurnsItContainsAndTheOthers(
            String before, int turnsAhead, String after, String expected) {
        tell(before);
        order.reported(new Event.Snapshot(CubeState.SOLVED, COOK, ++now), turnsAhead);
        tell(after);

        assertThat(written()).isEqualTo(expected);
        long latest = 0;
        for (Event event : order.settled()) {
            assertThat(event.atMicros()).isGreaterThanOrEqualTo(latest);
            latest = event.atMicros();
        }
    }

    @Test
    void shouldPutTwoEarlyStatesWhereEachBelongsWhenOneLossContainsBoth() {
        order.reported(new Event.Snapshot(CubeState.SOLVED, COOK, ++now), 4);
        order.reported(new Event.Snapshot(CubeState.SOLVED, COOK, ++now), 1);
        tell("6");

        assertThat(written()).isEqualTo("1 S 3 S 2");
    }

    @ParameterizedTest
    @CsvSource({"-64, true", "-65, false"})
    void shouldLeaveOutWhatComesLaterThanAnyFrame(int turnsAhead, boolean placed) {
        tell("t ".repeat(200).strip());

        assertThat(order.reported(new Event.Snapshot(CubeState.SOLVED, COOK, ++now), turnsAhead))
                .isEqualTo(placed);
    }

    private void tell(String items) {
        for (String item : items.split(" ")) {
            now += 300_000;
            switch (item) {
                case "" -> now++;
                case "t" -> order.turned(new Event.Turned(Turn.parse("R"), TurnSource.HEARD, COOK, now));
                case "?" -> order.lost(new Event.Gap(Event.Gap.UNKNOWN_COUNT, COOK, now));
                default -> order.lost(new Event.Gap(Integer.parseInt(item), COOK, now));
            }
        }
    }

    private String written() {
        return order.settled().stream().map(StreamOrderTest::written).collect(Collectors.joining(" "));
    }

    private static String written(Event event) {
        if (event instanceof Event.Gap gap) {
            return gap.turnsLost() == Event.Gap.UNKNOWN_COUNT ? "?" : Integer.toString(gap.turnsLost());
        }
        return event instanceof Event.Turned ? "t" : "S";
    }
}
