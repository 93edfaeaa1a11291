package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import fermata.decoder.stream.StreamEvent.EpochStarted;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Devices that tell less than the open layout does: the same frames, read with members of the profile left out. */
class OtherDevicesTest {
    private static final long SECOND = 1_000_000;
    private static final String SEQUENCE = "\"sequence\": { \"byte\": 1, \"bits\": 16 },";
    private static final String CLOCK = "\"clock\": { \"byte\": 3, \"bits\": 32, \"tickMicros\": 1000 },";
    private static final String BEFORE =
            ",\n        \"before\": { \"byte\": 9, \"bit\": 5, \"bits\": 11, \"saturates\": true }";

    private final DeviceModel device = new DeviceModel(-500 * SECOND, 0, CubeState.SOLVED);
    private final Random random = new Random(12);

    @Test
    void shouldFollowNarrowCountersOverManyWraps() {
        String json = OpenLayout.profileText()
                .replace(SEQUENCE, SEQUENCE.replace("16", "4"))
                .replace(CLOCK, CLOCK.replace("32", "16"));
        StreamDecoder decoder = new StreamDecoder(profile(json));

        List<StreamEvent> events = play(decoder, 3000, 0.2);

        List<MadeTurn> made = device.made();
        List<TurnSensed> turns = turns(events);
        assertThat(events).filteredOn(TurnsLost.class::isInstance).isEmpty();
        assertThat(turns)
                .extracting(TurnSensed::turn)
                .isEqualTo(made.stream().map(MadeTurn::turn).toList());
        assertThat(turns).extracting(TurnSensed::source).contains(TurnSource.HEARD, TurnSource.REPAIRED);
        long wraps = turns.get(0).deviceMicros().orElseThrow() - made.get(0).deviceMillis() * 1000;
        assertThat(wraps % 65_536_000).isZero();
        for (int i = 0; i < turns.size(); i++) {
            long stated = turns.get(i).deviceMicros().orElseThrow() - wraps;
            assertThat(stated - made.get(i).deviceMillis() * 1000)
                    .isBetween(0L, turns.get(i).earlierByMicros());
        }
    }

    @Test
    void shouldTimeByArrivalWithinOneIntervalWhenThereIsNoClock() {
        String json = OpenLayout.profileText().replace(CLOCK, "").replace(BEFORE, "");
        StreamDecoder decoder = new StreamDecoder(profile(json));

        List<StreamEvent> events = play(decoder, 600, 0.1);

        List<MadeTurn> made = device.made();
        List<TurnSensed> turns = turns(events);
        assertThat(turns).hasSize(600);
        assertThat(decoder.intervalMicros(0)).hasValue(30_000);
        assertThat(decoder.fit(0)).isEmpty();
        for (int i = 0; i < turns.size(); i++) {
            TurnTime time = decoder.timeOf(turns.get(i));
            long truth = made.get(i).deviceMillis() * 1000 - 500 * SECOND;
            assertThat(time.basis()).isEqualTo(TurnTime.Basis.ARRIVAL);
            assertThat(turns.get(i).deviceMicros()).isEmpty();
            // Host delay and whole milliseconds come on top of the interval.
            assertThat(time.boardMicros() - truth).isBetween(0L, time.earlierMicros() + 3_000);
        }
    }

    @Test
    void shouldTakeEveryFrameAndDropCopiesByTheirTickWhenThereIsNoSequence() {
        String json = withoutHistory(OpenLayout.profileText()).replace(SEQUENCE, "");
        StreamDecoder decoder = new StreamDecoder(profile(json));
        List<StreamEvent> events = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            device.turn(Turn.parse("R"), i * SECOND);
            RawFrame frame = device.turns(1, i / 50, i * SECOND + 9_000);
            events.addAll(decoder.accept(frame));
            events.addAll(decoder.accept(frame));
        }

        assertThat(turns(events)).hasSize(100).allMatch(t -> t.source() == TurnSource.HEARD);
        assertThat(events)
                .filteredOn(TurnsLost.class::isInstance)
                .as("at the reconnect")
                .hasSize(1);
    }

    @Test
    void shouldNotGuessOverAReconnectWhenNothingShowsThatTheDeviceWentOn() {
        String json = withoutHistory(OpenLayout.profileText()).replace(CLOCK, "");
        StreamDecoder decoder = new StreamDecoder(profile(json));
        List<StreamEvent> events = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            device.turn(Turn.ofIndex(i), i * SECOND);
            events.addAll(decoder.accept(device.turns(1, i / 2, i * SECOND + 9_000)));
        }

        assertThat(turns(events)).hasSize(4);
        assertThat(events)
                .filteredOn(TurnsLost.class::isInstance)
                .singleElement()
                .satisfies(lost -> assertThat(((TurnsLost) lost).count()).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(longs = {-3_600, 0, 3_600})
    void shouldStartAnEpochWhenTheClockIsSet(long bySeconds) {
        List<StreamEvent> events = new ArrayList<>();
        long at = 0;
        // Set by nothing but 80 ms forward, or by an hour either way.
        DeviceModel set = new DeviceModel(-4_000 * SECOND - bySeconds * SECOND - 80_000, 800, CubeState.SOLVED);
        StreamDecoder decoder = new StreamDecoder(OpenLayout.profile());
        DeviceModel before = new DeviceModel(-4_000 * SECOND, 0, CubeState.SOLVED);
        for (int i = 0; i < 900; i++) {
            DeviceModel talks = i < 800 ? before : set;
            at += 300_000 + random.nextInt(300_000);
            talks.turn(Turn.ofIndex(random.nextInt(18)), at);
            events.addAll(decoder.accept(talks.turns(1, 0, at + 1_000 + random.nextInt(30_000))));
        }

        assertThat(turns(events)).hasSize(900).allMatch(t -> t.source() == TurnSource.HEARD);
        assertThat(events).filteredOn(TurnsLost.class::isInstance).isEmpty();
        assertThat(events)
                .filteredOn(EpochStarted.class::isInstance)
                .extracting(e -> ((EpochStarted) e).reason())
                .containsExactly(
                        EpochReason.CONNECTED, bySeconds == 0 ? EpochReason.EARLY_ARRIVAL : EpochReason.CLOCK_JUMP);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void shouldNeverThrowNorRunBackWhenDevicesTalkNonsense(long seed) {
        Random nonsense = new Random(seed);
        StreamDecoder decoder = new StreamDecoder(OpenLayout.profile());
        long nanos = 0;
        int epoch = -1;
        for (int i = 0; i < 5_000; i++) {
            nanos += nonsense.nextInt(nonsense.nextInt(100) == 0 ? 2_000_000_000 : 50_000_000);
            List<MadeTurn> turns = new ArrayList<>();
            for (int t = 0; t <= nonsense.nextInt(6); t++) {
                turns.add(new MadeTurn(Turn.ofIndex(nonsense.nextInt(18)), 1000L * t + nonsense.nextInt(1000)));
            }
            byte[] bytes = nonsense.nextInt(5) == 0
                    ? OpenLayout.encodeState(nonsense.nextInt(300), nonsense.nextInt(100_000), CubeState.SOLVED)
                    : OpenLayout.encodeTurns(nonsense.nextInt(300), nonsense.nextInt(turns.size() + 1), turns);
            RawFrame frame =
                    new RawFrame(i / 500, bytes.length == 20 ? OpenLayout.TURNS : OpenLayout.STATE, nanos, bytes);

            for (StreamEvent event : decoder.accept(frame)) {
                assertThat(event.epoch()).isGreaterThanOrEqualTo(epoch);
                epoch = event.epoch();
                if (event instanceof TurnSensed turn) {
                    assertThat(decoder.timeOf(turn).earlierMicros()).isNotNegative();
                }
            }
        }
        assertThat(epoch).isPositive();
    }

    /** Plays turns over a 30 ms link; every fifth or so waits for the next, some frames are lost. */
    private List<StreamEvent> play(StreamDecoder decoder, int count, double loss) {
        List<StreamEvent> events = new ArrayList<>();
        long at = 0;
        for (int i = 0; i < count; i++) {
            at += 60_000 + random.nextInt(400_000) + (random.nextInt(200) == 0 ? 200 * SECOND : 0);
            device.turn(Turn.ofIndex(random.nextInt(18)), at);
            long sent = (at / 30_000 + 1) * 30_000;
            if (i == 0 || i == count - 1 || random.nextDouble() >= loss) {
                events.addAll(decoder.accept(device.turns(1, 0, sent + 1_000 + random.nextInt(1_000))));
            }
        }
        return events;
    }

    private static String withoutHistory(String json) {
        int from = json.indexOf("\"history\"");
        int to = json.indexOf("\"turns\": {", from);
        return (json.substring(0, from) + json.substring(to)).replace("\"fresh\": { \"byte\": 7, \"bits\": 4 },", "");
    }

    private static List<TurnSensed> turns(List<StreamEvent> events) {
        return events.stream()
                .filter(TurnSensed.class::isInstance)
                .map(TurnSensed.class::cast)
                .toList();
    }

    /** The open layout with narrower numbers. */
    static StreamProfile withSequenceBits(int bits) {
        return profile(OpenLayout.profileText().replace(SEQUENCE, SEQUENCE.replace("16", Integer.toString(bits))));
    }

    private static StreamProfile profile(String json) {
        // Only the turns frame loses members, so the frames that must agree with it go as well.
        int from = json.indexOf("    \"state\": {");
        int to = json.indexOf("    \"battery\": {");
        String lie = "{ \"characteristic\": \"0f15a9f1-48bc-4c2d-9b66-f78863c0a1f1\", \"frames\": [\"lie\"] },";
        String read = "{ \"characteristic\": \"acacdcfd-2a24-4e64-b0e7-16471a29d738\", \"frames\": [\"state\"] },";
        String turnsOnly =
                (json.substring(0, from) + json.substring(to)).replace(read, "").replace(lie, "");
        ProfileReading reading = StreamProfile.parse(turnsOnly);
        assertThat(reading).isInstanceOf(ProfileReading.Usable.class);
        return ((ProfileReading.Usable) reading).profile();
    }
}
