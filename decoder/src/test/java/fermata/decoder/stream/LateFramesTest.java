package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.StreamEvent.FrameRepeated;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames that the service delivers after later ones, as BlueZ 5.66 was seen to. */
class LateFramesTest {
    private static final long SECOND = 1_000_000;

    private final DeviceModel device = new DeviceModel(-500 * SECOND, 65_530, CubeState.SOLVED);
    private final List<StreamEvent> events = new ArrayList<>();

    /** Frames that were delivered, and the numbers of the turns that they hold. */
    private record Delivery(List<RawFrame> frames, BitSet heldTurns) {}

    @ParameterizedTest
    @CsvSource({"0, 0.0, 1", "0, 0.3, 2", "5, 0.0, 3", "5, 0.6, 4", "5, 0.9, 5"})
    void shouldLoseNothingThatAnyFrameHeldWhenFramesAreOvertaken(int history, double loss, long seed) {
        Delivery delivery = deliver(2000, history, loss, new Random(seed));
        StreamDecoder decoder = new StreamDecoder(history == 0 ? withoutHistory() : OpenLayout.profile());

        events.addAll(decoder.accept(delivery.frames()));

        BitSet sensed = new BitSet();
        int next = 0;
        for (StreamEvent event : events) {
            if (event instanceof TurnsLost lost) {
                next += lost.count().orElseThrow();
            } else if (event instanceof TurnSensed turn) {
                assertThat(turn.turn())
                        .as("turn " + next)
                        .isEqualTo(device.made().get(next).turn());
                sensed.set(next++);
            }
        }
        assertThat(next).isEqualTo(2000);
        assertThat(sensed).isEqualTo(delivery.heldTurns());
    }

    @Test
    void shouldGiveTheTurnsOfALateFrameTheirOwnTimes() {
        StreamDecoder decoder = new StreamDecoder(withoutHistory());
        List<RawFrame> frames = frames("R", "U", "F", "D");

        events.addAll(decoder.accept(List.of(frames.get(0), frames.get(2), frames.get(1), frames.get(3))));

        assertThat(turns()).containsExactly("R", "U", "F", "D");
        assertThat(events)
                .filteredOn(TurnSensed.class::isInstance)
                .extracting(event -> ((TurnSensed) event).deviceMicros().orElseThrow())
                .containsExactly(501_000_000L, 501_300_000L, 501_600_000L, 501_900_000L);
        assertThat(events).noneMatch(TurnsLost.class::isInstance).noneMatch(FrameRepeated.class::isInstance);
    }

    @Test
    void shouldWaitASecondAndThenSayTheGap() {
        StreamDecoder decoder = new StreamDecoder(withoutHistory());
        List<RawFrame> frames = frames("R", "U", "F", "D");
        long arrived = frames.get(2).arrivalMicros();

        events.addAll(decoder.accept(frames.get(0)));
        events.addAll(decoder.accept(frames.get(2)));
        assertThat(turns()).containsExactly("R");
        assertThat(decoder.settle(arrived + LateFrames.WAIT_MICROS - 1)).isEmpty();
        events.addAll(decoder.settle(arrived + LateFrames.WAIT_MICROS));

        assertThat(turns()).containsExactly("R", "lost 1", "F");
    }

    @Test
    void shouldTakeNothingBackWhenAFrameIsLaterThanTheWait() {
        StreamDecoder decoder = new StreamDecoder(withoutHistory());
        List<RawFrame> frames = frames("R", "U", "F", "D");
        RawFrame late = frames.get(1);
        RawFrame afterTheWait = new RawFrame(0, late.characteristic(), 4_000_000_000L, late.bytes());

        events.addAll(decoder.accept(List.of(frames.get(0), frames.get(2), frames.get(3), afterTheWait)));

        assertThat(turns()).containsExactly("R", "lost 1", "F", "D");
        assertThat(events).filteredOn(FrameRepeated.class::isInstance).hasSize(1);
    }

    @Test
    void shouldEndTheWaitWhenTheLinkDoes() {
        StreamDecoder decoder = new StreamDecoder(withoutHistory());
        List<RawFrame> frames = frames("R", "U", "F", "D");
        RawFrame last = frames.get(3);

        events.addAll(decoder.accept(frames.get(0)));
        events.addAll(decoder.accept(frames.get(2)));
        events.addAll(decoder.accept(new RawFrame(1, last.characteristic(), last.arrivalNanos(), last.bytes())));

        assertThat(turns()).containsExactly("R", "lost 1", "F", "D");
    }

    @Test
    void shouldSayWhatWaitedBeforeADeviceThatRestarted() {
        StreamDecoder decoder = new StreamDecoder(withoutHistory());
        List<RawFrame> frames = frames("R", "U", "F");
        DeviceModel restarted = new DeviceModel(SECOND, 0, CubeState.SOLVED);
        restarted.turn(Turn.parse("B"), 2 * SECOND);

        events.addAll(decoder.accept(List.of(frames.get(0), frames.get(2), restarted.turns(1, 0, 2 * SECOND))));

        assertThat(turns()).containsExactly("R", "lost 1", "F", "lost ?", "B");
    }

    private List<RawFrame> frames(String... turns) {
        List<RawFrame> frames = new ArrayList<>();
        for (String turn : turns) {
            long at = SECOND + 300_000L * frames.size();
            device.turn(Turn.parse(turn), at);
            frames.add(device.turns(1, 0, at + 20_000));
        }
        return frames;
    }

    /** One frame a turn, each up to 0.9 s late; the first ones and the last are neither late nor lost. */
    private Delivery deliver(int count, int history, double loss, Random random) {
        List<RawFrame> frames = new ArrayList<>();
        BitSet held = new BitSet();
        long at = 0;
        for (int i = 0; i < count; i++) {
            at += i < 5 || i == count - 1 ? 2 * SECOND : 70_000 + random.nextInt(300_000);
            device.turn(Turn.ofIndex(random.nextInt(18)), at);
            boolean sure = i < 4 || i == count - 1;
            if (sure || random.nextDouble() >= loss) {
                frames.add(device.turns(1, 0, at + 10_000 + (sure ? 0 : random.nextInt(900_000))));
                held.set(Math.max(0, i - history), i + 1);
            }
        }
        frames.sort(Comparator.comparingLong(RawFrame::arrivalNanos));
        return new Delivery(frames, held);
    }

    private List<String> turns() {
        return events.stream()
                .filter(event -> event instanceof TurnSensed || event instanceof TurnsLost)
                .map(event -> event instanceof TurnSensed turn
                        ? turn.turn().toString()
                        : "lost " + word(((TurnsLost) event).count()))
                .toList();
    }

    private static String word(OptionalInt count) {
        return count.isPresent() ? Integer.toString(count.getAsInt()) : "?";
    }

    private static StreamProfile withoutHistory() {
        String json = OpenLayout.profileText();
        int from = json.indexOf("\"history\"");
        int to = json.indexOf("\"turns\": {", from);
        String shorter =
                (json.substring(0, from) + json.substring(to)).replace("\"fresh\": { \"byte\": 7, \"bits\": 4 },", "");
        return ((ProfileReading.Usable) StreamProfile.parse(shorter)).profile();
    }
}
