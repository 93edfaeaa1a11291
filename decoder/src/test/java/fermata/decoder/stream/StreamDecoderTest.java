package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import fermata.decoder.stream.StreamEvent.EpochStarted;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.FrameRepeated;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StreamDecoderTest {
    private static final long SECOND = 1_000_000;

    private final StreamDecoder decoder = new StreamDecoder(OpenLayout.profile());
    private final DeviceModel device = new DeviceModel(-500 * SECOND, 65_530, CubeState.SOLVED);
    private final List<StreamEvent> events = new ArrayList<>();
    private int index;

    @ParameterizedTest
    @CsvSource({"0.0, 0.0", "0.1, 0.1", "0.5, 0.3", "0.9, 0.0"})
    void shouldGiveEveryTurnOnceOrCountItLostWhenFramesAreLostAndCopied(double loss, double copies) {
        Random random = new Random(Double.hashCode(loss));
        List<RawFrame> frames = new ArrayList<>();
        long at = 0;
        int pending = 0;
        for (int i = 0; i < 5000; i++) {
            at += 1000 * (30 + random.nextInt(random.nextInt(50) == 0 ? 9000 : 400));
            device.turn(Turn.ofIndex(random.nextInt(18)), at);
            pending++;
            boolean waits = pending < 4 && random.nextInt(5) == 0;
            if (!waits || i == 4999) {
                RawFrame frame = device.turns(pending, 0, at + 20_000);
                pending = 0;
                boolean arrives = i < 4 || i == 4999 || random.nextDouble() >= loss;
                for (int copy = 0; arrives && copy < (random.nextDouble() < copies ? 2 : 1); copy++) {
                    frames.add(frame);
                }
            }
        }

        events.addAll(decoder.accept(frames));

        assertThat(events).filteredOn(EpochStarted.class::isInstance).hasSize(1);
        List<MadeTurn> made = device.made();
        int next = 0;
        int heard = 0;
        for (StreamEvent event : events) {
            if (event instanceof TurnsLost lost) {
                next += lost.count().orElseThrow();
            } else if (event instanceof TurnSensed turn) {
                assertThat(turn.turn()).isEqualTo(made.get(next).turn());
                assertWhen(turn, made.get(next).deviceMillis() * 1000);
                heard += turn.source() == TurnSource.HEARD ? 1 : 0;
                next++;
            }
        }
        assertThat(next).isEqualTo(5000);
        assertThat(heard).isBetween((int) (5000 * (1 - loss) * 0.8), 5000);
        assertThat(events.stream().anyMatch(TurnsLost.class::isInstance)).isEqualTo(loss > 0.3);
    }

    private static void assertWhen(TurnSensed turn, long truthMicros) {
        long stated = turn.deviceMicros().orElseThrow();
        assertThat(truthMicros).isLessThanOrEqualTo(stated);
        // The subtraction cannot overflow: a bound beyond all time is only given before the first known turn.
        assertThat(truthMicros).isGreaterThanOrEqualTo(stated - turn.earlierByMicros());
    }

    @Test
    void shouldRepairOneMissedFrameWithItsOwnTime() {
        hear("R", 1.0);
        miss("U", 1.3);
        hear("F'", 1.5);

        assertThat(story()).containsExactly("epoch CONNECTED", "heard R", "repaired U", "heard F'");
        TurnSensed repaired = (TurnSensed) events.get(2);
        assertThat(repaired.deviceMicros()).hasValue(501_300_000);
        assertThat(repaired.arrivalMicros()).isEqualTo(1_520_000);
    }

    @Test
    void shouldCountWhatTheHistoryNoLongerHolds() {
        hear("R", 1.0);
        for (int i = 0; i < 8; i++) {
            miss("U", 1.1 + i * 0.1);
        }
        hear("F", 2.0);
        events.addAll(decoder.settle(Long.MAX_VALUE));

        assertThat(story())
                .containsExactly(
                        "epoch CONNECTED",
                        "heard R",
                        "lost 3",
                        "repaired U",
                        "repaired U",
                        "repaired U",
                        "repaired U",
                        "repaired U",
                        "heard F");
    }

    @Test
    void shouldBoundTheTimeOfATurnBeforeALongPause() {
        hear("R", 1.0);
        miss("U", 4.0);
        hear("F", 60.0);

        TurnSensed bounded = (TurnSensed) events.get(2);
        assertThat(bounded.deviceMicros()).hasValue(500_000_000 + 60_000_000 - 2_047_000);
        assertThat(bounded.earlierByMicros()).isEqualTo(60_000_000 - 2_047_000 - 1_000_000);
    }

    @Test
    void shouldNotTakeTheHistoryBeforeTheCaptureForNews() {
        for (int i = 0; i < 5; i++) {
            miss("U", 0.1 * i);
        }
        hear("F", 1.0);

        assertThat(story()).containsExactly("epoch CONNECTED", "heard F");
    }

    @Test
    void shouldRepairTurnsMadeAfterTheStateWasRead() {
        feed(device.state(0, 100_000));
        miss("U", 0.5);
        hear("F", 1.0);
        feed(device.state(0, 2 * SECOND));

        assertThat(story()).containsExactly("epoch CONNECTED", "state +0", "repaired U", "heard F", "state +0");
        assertThat(((StateReported) events.get(4)).state())
                .isEqualTo(CubeState.SOLVED.apply(List.of(Turn.parse("U"), Turn.parse("F"))));
    }

    @Test
    void shouldOnlyCallTurnsLostBetweenTwoStatesWhenTheNumberMoved() {
        feed(device.state(0, SECOND));
        feed(device.state(1, 5 * SECOND));
        miss("U", 6);
        feed(device.state(2, 8 * SECOND));
        index = 2;
        miss("D", 9);
        hear("R", 10);

        assertThat(story())
                .containsExactly(
                        "epoch CONNECTED",
                        "state +0",
                        "epoch CONNECTED",
                        "state +0",
                        "epoch CONNECTED",
                        "lost ?",
                        "state +0",
                        "repaired D",
                        "heard R");
    }

    @Test
    void shouldForgiveADeviceThatRoundsEachDifference() {
        List<MadeTurn> turns = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            turns.add(new MadeTurn(Turn.ofIndex(i % 18), 1000 + 100L * i));
            if (i % 3 != 1) {
                // The newest is right, all differences are a millisecond too long.
                List<MadeTurn> rounded = new ArrayList<>();
                for (int t = 0; t < turns.size(); t++) {
                    rounded.add(new MadeTurn(turns.get(t).turn(), turns.get(t).deviceMillis() - (i - t)));
                }
                feed(new RawFrame(
                        0, OpenLayout.TURNS, (1010 + 100L * i) * 1_000_000, OpenLayout.encodeTurns(i, 1, rounded)));
            }
        }

        assertThat(story())
                .hasSize(61)
                .filteredOn(line -> line.startsWith("repaired"))
                .hasSize(20);
        assertThat(story()).noneMatch(line -> line.startsWith("lost"));
    }

    @Test
    void shouldSayHowFarAStateIsAhead() {
        hear("R", 1.0);
        miss("U", 1.5);
        feed(device.state(0, 2 * SECOND));

        assertThat(story()).endsWith("state +1");
    }

    @Test
    void shouldDropCopiesAndFramesThatWereOvertaken() {
        hear("R", 1.0);
        device.turn(Turn.parse("U"), (long) (1.1 * SECOND));
        RawFrame late = device.turns(1, 0, (long) (1.3 * SECOND));
        hear("F", 1.2);
        feed(late);
        feed(late);
        hear("D", 1.5);

        assertThat(story())
                .containsExactly(
                        "epoch CONNECTED", "heard R", "repaired U", "heard F", "repeated", "repeated", "heard D");
    }

    @Test
    void shouldRepairOverAReconnectWhenTheDeviceWentOn() {
        hear("R", 1.0);
        miss("U", 5.0);
        index = 1;
        hear("F", 20.0);

        assertThat(story()).containsExactly("epoch CONNECTED", "heard R", "epoch CONNECTED", "repaired U", "heard F");
    }

    @Test
    void shouldDropAFrameThatIsSentAgainAfterAReconnect() {
        hear("R", 1.0);
        RawFrame again = device.turns(1, 1, 600 * SECOND);
        feed(again);

        assertThat(story()).containsExactly("epoch CONNECTED", "heard R", "epoch CONNECTED", "repeated");
    }

    @ParameterizedTest
    @CsvSource({"0", "65528", "30000", "65531"})
    void shouldCallItANewSessionWhenTheDeviceRestarted(long firstSequence) {
        hear("R", 1.0);
        hear("U", 2.0);
        DeviceModel restarted = new DeviceModel(100 * SECOND, firstSequence, CubeState.SOLVED);
        restarted.turn(Turn.parse("B"), 101 * SECOND);
        feed(restarted.turns(1, 0, 101 * SECOND + 9_000));
        restarted.turn(Turn.parse("L"), 102 * SECOND);
        feed(restarted.turns(1, 0, 102 * SECOND + 9_000));

        assertThat(story())
                .filteredOn(line -> !line.startsWith("epoch"))
                .containsExactly("heard R", "heard U", "lost ?", "heard B", "heard L");
        assertThat(events).filteredOn(EpochStarted.class::isInstance).hasSize(2);
    }

    @Test
    void shouldGoOnAfterABrokenFrameAndRepairIt() {
        hear("R", 1.0);
        device.turn(Turn.parse("U"), (long) (1.5 * SECOND));
        byte[] damaged = device.turns(1, 0, 0).bytes();
        damaged[5] ^= 4;
        feed(new RawFrame(0, OpenLayout.TURNS, 1_510_000_000, damaged));
        hear("F", 1.7);

        assertThat(story())
                .containsExactly("epoch CONNECTED", "heard R", "rejected WRONG_CHECKSUM", "repaired U", "heard F");
    }

    @Test
    void shouldGiveTheSameAgainFromTheSameFrames() {
        Random random = new Random(1);
        List<RawFrame> frames = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            device.turn(Turn.ofIndex(random.nextInt(18)), i * SECOND / 3);
            if (random.nextInt(4) > 0) {
                frames.add(device.turns(1, i / 200, i * SECOND / 3 + random.nextInt(50_000)));
            }
        }

        StreamDecoder again = new StreamDecoder(OpenLayout.profile());

        assertThat(again.accept(frames)).isEqualTo(decoder.accept(frames));
        assertThat(again.fit(1)).isEqualTo(decoder.fit(1)).isPresent();
    }

    @Test
    void shouldPutTurnsOnTheBoardsClockAndNeverBack() {
        Random random = new Random(2);
        long at = 0;
        List<Long> truth = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            at += 60_000 + random.nextInt(300_000);
            truth.add(at);
            device.turn(Turn.ofIndex(random.nextInt(18)), at);
            feed(device.turns(1, i / 1000, at + 1000 + random.nextInt(45_000)));
        }

        TurnTimeline timeline = new TurnTimeline(decoder);
        List<TurnTime> times = events.stream()
                .filter(TurnSensed.class::isInstance)
                .map(e -> timeline.next((TurnSensed) e))
                .toList();

        assertThat(times).hasSize(3000);
        for (int i = 0; i < 3000; i++) {
            assertThat(times.get(i).basis()).isEqualTo(TurnTime.Basis.DEVICE);
            assertThat(times.get(i).boardMicros() - truth.get(i))
                    .as("turn " + i)
                    .isBetween(-1_000L, 3_000L);
            assertThat(i == 0 || times.get(i).boardMicros() >= times.get(i - 1).boardMicros())
                    .isTrue();
        }
    }

    private void hear(String turn, double seconds) {
        miss(turn, seconds);
        feed(device.turns(1, index, (long) (seconds * SECOND) + 20_000));
    }

    private void miss(String turn, double seconds) {
        device.turn(Turn.parse(turn), Math.round(seconds * SECOND));
    }

    private void feed(RawFrame frame) {
        events.addAll(decoder.accept(frame));
    }

    private List<String> story() {
        return events.stream().map(StreamDecoderTest::line).toList();
    }

    private static String line(StreamEvent event) {
        if (event instanceof TurnSensed turn) {
            return (turn.source() == TurnSource.HEARD ? "heard " : "repaired ") + turn.turn();
        }
        if (event instanceof TurnsLost lost) {
            return "lost " + (lost.count().isPresent() ? lost.count().getAsInt() : "?");
        }
        if (event instanceof StateReported state) {
            OptionalInt ahead = state.turnsAhead();
            return "state " + (ahead.isPresent() ? "+" + ahead.getAsInt() : "?");
        }
        if (event instanceof EpochStarted epoch) {
            return "epoch " + epoch.reason();
        }
        if (event instanceof FrameRejected rejected) {
            return "rejected " + rejected.fault().kind();
        }
        return event instanceof FrameRepeated ? "repeated" : event.toString();
    }
}
