package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.StreamEvent.EpochStarted;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said where a clock or a number goes where no turning takes it, and where it goes as far as it may. */
class RestartedDeviceTest {
    private static final long SECOND = 1_000_000;

    private final List<StreamEvent> events = new ArrayList<>();
    private DeviceModel device = new DeviceModel(-500 * SECOND, 0, CubeState.SOLVED);
    private StreamDecoder decoder = new StreamDecoder(OpenLayout.profile());

    private void miss(int turns, double seconds) {
        for (int turn = 0; turn < turns; turn++) {
            device.turn(Turn.ofIndex(turn % 18), Math.round((seconds + 0.01 * turn) * SECOND));
        }
    }

    private void hear(double seconds) {
        miss(1, seconds);
        feed(device.turns(1, 0, Math.round(seconds * SECOND) + 5_000));
    }

    private void feed(RawFrame frame) {
        events.addAll(decoder.accept(frame));
    }

    private String story() {
        StringBuilder story = new StringBuilder();
        for (StreamEvent event : events) {
            if (event instanceof TurnSensed turn) {
                story.append(turn.source() == TurnSource.HEARD ? "t " : "r ");
            } else if (event instanceof TurnsLost lost) {
                story.append(lost.count().isPresent() ? lost.count().getAsInt() + " " : "? ");
            } else if (event instanceof EpochStarted epoch) {
                story.append(epoch.reason()).append(' ');
            } else if (event instanceof StateReported state) {
                OptionalInt ahead = state.turnsAhead();
                story.append(ahead.isPresent() ? "S" + ahead.getAsInt() : "S").append(' ');
            } else {
                story.append("= ");
            }
        }
        return story.toString().strip();
    }

    private void restart(long atSeconds, long sequence) {
        device = new DeviceModel(atSeconds * SECOND, sequence, CubeState.SOLVED);
    }

    /** Its clock says that it began anew: what it did meanwhile nobody knows, from here on everything is known. */
    @Test
    void shouldBeginAnewAtAStateWhoseClockRestarted() {
        hear(1);
        hear(2);
        restart(100, 7);
        feed(device.state(0, 101 * SECOND));
        hear(102);

        assertThat(story()).isEqualTo("CONNECTED t t CLOCK_JUMP ? S0 t");
        assertThat(events.get(5).epoch()).isEqualTo(1);
        assertThat(((TurnSensed) events.get(6)).deviceMicros()).hasValue(2 * SECOND);
    }

    /** Eight turns are missing, six are held: that frame waits. What waits belongs before the restart. */
    @Test
    void shouldSayWhatWaitedBeforeAStateWhoseClockRestarted() {
        hear(1);
        miss(8, 1.1);
        hear(1.3);
        restart(1, 7);
        feed(device.state(0, 1_900_000));
        hear(3);

        assertThat(story()).isEqualTo("CONNECTED t 3 r r r r r t CLOCK_JUMP ? S0 t");
        assertThat(events)
                .filteredOn(StateReported.class::isInstance)
                .allSatisfy(state -> assertThat(state.arrivalMicros()).isEqualTo(1_900_000));
    }

    @Test
    void shouldGoOnAtAStateWhoseClockWentOn() {
        hear(1);
        miss(1, 2);
        feed(device.state(0, 3 * SECOND));
        feed(device.state(1, 60 * SECOND));
        miss(2, 61);
        feed(device.turns(1, 1, 62 * SECOND));

        assertThat(story()).isEqualTo("CONNECTED t S1 CONNECTED S1 r r t");
    }

    /** A clock set by an hour while the numbers go on without a hole: no turn is lost. */
    @Test
    void shouldLoseNothingWhenOnlyTheClockWasSet() {
        hear(1);
        hear(2);
        restart(-4_000, 2);
        hear(3);

        assertThat(story()).isEqualTo("CONNECTED t t CLOCK_JUMP t");
    }

    /** With a hole in the numbers as well it may have been restarted. */
    @Test
    void shouldNotCountTheHoleWhenClockAndNumberBothLeap() {
        hear(1);
        hear(2);
        restart(-4_000, 12);
        hear(3);

        assertThat(story()).isEqualTo("CONNECTED t t CLOCK_JUMP ? t");
    }

    /**
     * Of 32 numbers a quarter may be waited for: 8. What is further ahead is taken at once, since after more turns it
     * would be taken for the past; and beyond half, 16, it is the past or a restart.
     */
    @ParameterizedTest
    @CsvSource({
        "6, 'CONNECTED t r r r r r t', ''",
        "7, 'CONNECTED t', ' 1 r r r r r t'",
        "8, 'CONNECTED t', ' 2 r r r r r t'",
        "9, 'CONNECTED t 3 r r r r r t', ''",
        "16, 'CONNECTED t 10 r r r r r t', ''",
        "17, 'CONNECTED t SEQUENCE_RESET ? t', ''"
    })
    void shouldWaitForWhatIsAQuarterOfTheNumbersAheadAndNoFurther(int ahead, String atOnce, String later) {
        decoder = new StreamDecoder(OtherDevicesTest.withSequenceBits(5));
        hear(1);
        miss(ahead - 1, 1.1);
        hear(1.4);
        assertThat(story()).isEqualTo(atOnce);

        events.addAll(decoder.settle(Long.MAX_VALUE));
        assertThat(story()).isEqualTo(atOnce + later);
    }

    /** One frame waits at 7 of 32; the next, 10 ahead of what is known, lets it go first and joins on. */
    @Test
    void shouldLetGoWhatWaitsBeforeAFrameThatMayNotWait() {
        decoder = new StreamDecoder(OtherDevicesTest.withSequenceBits(5));
        hear(1);
        miss(6, 1.1);
        hear(1.3);
        miss(2, 1.4);
        hear(1.5);

        assertThat(story()).isEqualTo("CONNECTED t 1 r r r r r t r r t");
    }

    /** Nobody turns faster than 40 times a second for long: a number that is further ahead is another device's. */
    @ParameterizedTest
    @CsvSource({"1, 104, true", "1, 105, false", "10, 464, true", "10, 465, false"})
    void shouldTakeMoreTurnsThanAHandMakesForARestart(int seconds, int ahead, boolean isBelieved) {
        hear(1);
        long arrival = 1_005_000 + seconds * SECOND;
        restart(-500, ahead);
        device.turn(Turn.parse("F"), arrival - 5_000);
        feed(device.turns(1, 0, arrival));
        events.addAll(decoder.settle(Long.MAX_VALUE));

        assertThat(story())
                .isEqualTo(isBelieved ? "CONNECTED t " + (ahead - 1) + " t" : "CONNECTED t SEQUENCE_RESET ? t");
    }
}
