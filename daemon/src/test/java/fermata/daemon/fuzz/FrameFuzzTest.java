package fermata.daemon.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.TurnTimeline;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Frames of any bytes, in any order, over cut connections and late: the decoder throws nothing, tells no more turns
 * than the bytes have room for, and gives times that never fall.
 */
class FrameFuzzTest {
    private static final UUID OTHER = UUID.fromString("0000ab01-0000-1000-8000-00805f9b34fb");
    private static final List<UUID> PLACES =
            List.of(OpenLayout.TURNS, OpenLayout.STATE, OpenLayout.ORIENTATION, OpenLayout.BATTERY_LEVEL, OTHER);
    private static final int MOST_FRAMES = 32;
    /** A frame is read, its events are made, and a line is fitted through the turns of its epoch. */
    private static final long MOST_BYTES = 200_000;

    private static StreamProfile profile(String text) {
        ProfileReading reading = StreamProfile.parse(text);
        assertThat(reading).isInstanceOf(ProfileReading.Usable.class);
        return ((ProfileReading.Usable) reading).profile();
    }

    private static Mutations frames() {
        List<byte[]> corpus = new ArrayList<>();
        List<MadeTurn> made = new ArrayList<>();
        for (int sequence = 1; sequence <= 40; sequence++) {
            made.add(new MadeTurn(Turn.ofIndex(sequence * 7 % 18), sequence * 90L));
            corpus.add(OpenLayout.encodeTurns(sequence, 1, made.subList(Math.max(0, sequence - 6), sequence)));
        }
        corpus.add(OpenLayout.encodeTurns(65_535, 1, made.subList(34, 40)));
        corpus.add(OpenLayout.encodeState(12, 1_500, CubeState.SOLVED));
        corpus.add(OpenLayout.encodeState(
                40, 4_000, CubeState.SOLVED.apply(made.get(3).turn())));
        corpus.add(OpenLayout.encodeOrientation(4_100, new Quaternion(1, 0, 0, 0)));
        corpus.add(OpenLayout.encodeBattery(87));
        corpus.add(new byte[] {0x22, 0, 0, 1, 1, 1, 1, 0, 9});
        corpus.add(new byte[0]);
        return new Mutations(corpus, List.of("\u0000", "\u0000\u0000\u0000\u0000", "\u007f\u007f", "\u0001"));
    }

    /** One decoder reads up to 32 frames, each spoiled by itself. */
    private static Fuzzing.Reader reader(StreamProfile profile, Mutations frames) {
        return (input, random) -> {
            int count = 1 + random.nextInt(MOST_FRAMES);
            List<RawFrame> raw = new ArrayList<>();
            long arrival = random.nextLong(1L << 40);
            int connection = 1;
            int bytes = 0;
            for (int frame = 0; frame < count; frame++) {
                byte[] value = frame == 0 ? input : frames.next(random);
                arrival += random.nextInt(8) == 0 ? random.nextLong(1L << 45) : random.nextLong(200_000_000);
                connection += random.nextInt(12) == 0 ? 1 : 0;
                bytes += value.length;
                raw.add(new RawFrame(connection, PLACES.get(random.nextInt(PLACES.size())), arrival, value));
            }
            check(profile, raw, bytes, random);
            return count;
        };
    }

    private static void check(StreamProfile profile, List<RawFrame> raw, int bytes, SplittableRandom random) {
        StreamDecoder decoder = new StreamDecoder(profile);
        List<StreamEvent> events = new ArrayList<>();
        for (RawFrame frame : raw) {
            events.addAll(decoder.accept(frame));
            if (random.nextInt(4) == 0) {
                events.addAll(decoder.settle(frame.arrivalNanos() / 1_000));
            }
        }
        events.addAll(decoder.settle(Long.MAX_VALUE));
        // A byte holds two turns at most; a frame may also tell of a state, a gap, a new epoch and a fault.
        assertAtMost(events.size(), 8L * bytes + 8L * raw.size());
        TurnTimeline timeline = new TurnTimeline(decoder);
        long last = Long.MIN_VALUE;
        for (StreamEvent event : events) {
            if (event instanceof TurnSensed turn) {
                long at = timeline.next(turn).boardMicros();
                if (at < last) {
                    throw new AssertionError("time falls from " + last + " to " + at);
                }
                last = at;
            } else if (event instanceof OrientationSensed sample) {
                decoder.boardMicrosOf(sample);
            }
        }
    }

    private static void assertAtMost(long count, long most) {
        if (count > most) {
            throw new AssertionError(count + " events, where " + most + " have room");
        }
    }

    private static String text(String name) {
        return switch (name) {
            case "open" -> SampleProfiles.open();
            case "other" -> SampleProfiles.OTHER;
            default -> SampleProfiles.plain();
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"open", "other", "plain"})
    void shouldTellWhatThereIsRoomForWhenFramesAreSpoiled(String name) {
        Mutations frames = frames();
        Fuzzing.shortly(name + " frames", 20_000, frames, MOST_BYTES, reader(profile(text(name)), frames));
    }

    @ParameterizedTest
    @ValueSource(strings = {"open", "other", "plain"})
    @Tag("fuzz")
    void shouldTellWhatThereIsRoomForHoweverLongFramesAreSpoiled(String name) {
        Mutations frames = frames();
        double percent = name.equals("open") ? 37 : 19;
        Fuzzing.at(name + " frames", percent, frames, MOST_BYTES, reader(profile(text(name)), frames));
    }

    private static final Mutations PROFILES = new Mutations(
            Mutations.texts(List.of(SampleProfiles.open(), SampleProfiles.OTHER, SampleProfiles.plain())),
            List.of(
                    "null",
                    "{}",
                    "[]",
                    "\"\"",
                    "true",
                    "\"bits\": 63",
                    "\"bits\": 64",
                    "\"stride\": 0",
                    "\"entries\": 999",
                    "\"byte\": -2147483648",
                    "\"tickMicros\": 1e-300",
                    "\"tickMicros\": 1e300",
                    "\"name\": \"(a+)+b\"",
                    "\"signed\": true",
                    "\"order\": \"big\"",
                    "\"bytes\": [0, 0]",
                    "1e99999999999",
                    "\u001b",
                    "\"",
                    "\"kind\": \"state\"",
                    "\"kind\": \"orientation\"",
                    "\"kind\": \"battery\"",
                    "[[[[[[[[[[[[[["));

    /** A profile is usable, and then reads any frame, or its problems are told. */
    private static Fuzzing.Reader profileReader(Mutations frames) {
        return (input, random) -> {
            String text = new String(input, java.nio.charset.StandardCharsets.UTF_8);
            ProfileReading reading = StreamProfile.parse(text);
            if (reading instanceof ProfileReading.Unusable unusable) {
                if (unusable.problems().isEmpty()) {
                    throw new AssertionError("unusable without a problem");
                }
                unusable.problems()
                        .forEach(problem -> assertAtMost(problem.message().length(), 2_000));
            } else {
                reader(((ProfileReading.Usable) reading).profile(), frames).read(frames.next(random), random);
            }
            return 1;
        };
    }

    @Test
    void shouldNameTheProblemsWhenAProfileIsSpoiled() {
        Fuzzing.shortly("profiles", 1_000, PROFILES, MOST_BYTES, profileReader(frames()));
    }

    @Test
    @Tag("fuzz")
    void shouldNameTheProblemsHoweverLongProfilesAreSpoiled() {
        Fuzzing.at("profiles", 5, PROFILES, MOST_BYTES, profileReader(frames()));
    }
}
