package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.OrientationFrame;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrientationStreamTest {
    private static final long SECOND = 1_000_000;

    /** Floats, big end first, no clock, the world as the sensor sees it, x up; the sensor sits on its side. */
    private static final String FLOATS = OpenLayout.profileText()
            .replaceFirst(
                    "\"clock\": \\{ \"byte\": 1, \"bits\": 32, \"tickMicros\": 1000 },\\s*\"quaternion\"",
                    "\"quaternion\"")
            .replace("\"bytes\": 14", "\"bytes\": 18")
            .replace("\"w\": { \"byte\": 5, \"bits\": 16, \"signed\": true }", floatAt("w", 1))
            .replace("\"x\": { \"byte\": 7, \"bits\": 16, \"signed\": true }", floatAt("x", 5))
            .replace("\"y\": { \"byte\": 9, \"bits\": 16, \"signed\": true }", floatAt("y", 9))
            .replace("\"z\": { \"byte\": 11, \"bits\": 16, \"signed\": true },", floatAt("z", 13))
            .replace("\"one\": 16384", "")
            .replace("sensor-to-world", "world-to-sensor")
            .replace("\"x\": \"R\", \"y\": \"B\", \"z\": \"U\"", "\"x\": \"F\", \"y\": \"L\", \"z\": \"D\"")
            .replace("\"up\": \"z\"", "\"up\": \"x\"")
            .replace("\"byte\": 13, \"from\": 0, \"to\": 13", "\"byte\": 17, \"from\": 0, \"to\": 17");

    private static String floatAt(String name, int offset) {
        return "\"" + name + "\": { \"byte\": " + offset + ", \"bits\": 32, \"order\": \"big\" }";
    }

    /** The same quarter turns of the cube, seen by a sensor that sits and counts otherwise. */
    @Test
    void shouldGiveTheSameOrientationWhateverTheSensorsAxes() {
        assertThat(StreamProfile.parse(FLOATS)).isInstanceOf(ProfileReading.Usable.class);
        FrameReader floats = new FrameReader(((ProfileReading.Usable) StreamProfile.parse(FLOATS)).profile());
        FrameReader open = new FrameReader(OpenLayout.profile());
        Random random = new Random(3);
        // Sensor x, y, z out of F, L, D: the axes R, U, F of the core are its -y, -z, x.
        Quaternion sensorToCore =
                Quaternion.takingAxesTo(new double[] {0, 0, 1}, new double[] {-1, 0, 0}, new double[] {0, -1, 0});
        // World x is up: its y and z lie flat, y towards the viewer's left, z towards the viewer.
        Quaternion worldToOurs =
                Quaternion.takingAxesTo(new double[] {0, 1, 0}, new double[] {-1, 0, 0}, new double[] {0, 0, 1});
        for (int round = 0; round < 200; round++) {
            Quaternion core = Quaternion.scaled(
                    random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
            Quaternion sent =
                    worldToOurs.inverse().after(core).after(sensorToCore).inverse();

            OrientationFrame read = (OrientationFrame) floats.read(OpenLayout.ORIENTATION, floatFrame(sent));
            OrientationFrame ours = (OrientationFrame)
                    open.read(OpenLayout.ORIENTATION, OpenLayout.encodeOrientation(0, asOpenSensor(core)));

            assertThat(read.attitude().angleTo(core)).as("round " + round).isCloseTo(0, within(1e-3));
            assertThat(ours.attitude().angleTo(core)).as("round " + round).isCloseTo(0, within(1e-3));
            assertThat(read.ticks()).isEmpty();
        }
    }

    private static byte[] floatFrame(Quaternion q) {
        ByteBuffer frame = ByteBuffer.allocate(18).order(ByteOrder.BIG_ENDIAN);
        frame.put((byte) 0xC5);
        for (double component : new double[] {q.w(), q.x(), q.y(), q.z()}) {
            frame.putFloat((float) component);
        }
        return crc8(frame.array());
    }

    /** CRC-8 of polynomial 7 begun with 0xFF over all but the last byte, which it becomes. */
    private static byte[] crc8(byte[] frame) {
        int register = 0xFF;
        for (int i = 0; i < frame.length - 1; i++) {
            register ^= frame[i] & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                register = register >= 0x80 ? (register << 1 ^ 7) & 0xFF : register << 1;
            }
        }
        frame[frame.length - 1] = (byte) register;
        return frame;
    }

    /** Core to a world with y up, as a sensor with x, y, z out of R, B, U in a world with z up would say it. */
    private static Quaternion asOpenSensor(Quaternion core) {
        Quaternion quarter = Quaternion.about(1, 0, 0, Math.PI / 2);
        return quarter.after(core).after(quarter.inverse());
    }

    @Test
    void shouldRejectASensorThatIsNotReadyAndSayWhy() {
        byte[] zeros = crc8(new byte[] {(byte) 0xC5, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0});

        Broken broken = (Broken) new FrameReader(OpenLayout.profile()).read(OpenLayout.ORIENTATION, zeros);

        assertThat(broken.fault().message())
                .isEqualTo(
                        "lie.quaternion at byte 5 is [0.0, 0.0, 0.0, 0.0], expected a quaternion of length 1, not 0.0");
        assertThat(new StreamDecoder(OpenLayout.profile()).accept(frame(zeros, 0, SECOND)))
                .hasAtLeastOneElementOfType(FrameRejected.class);
    }

    /** Loss, a reconnect, a restart: whatever happens to the turns, samples between them must change nothing. */
    @ParameterizedTest
    @CsvSource({"0.0", "0.1", "0.6"})
    void shouldGiveTheSameTurnsWithAndWithoutSamplesBetween(double loss) {
        Random random = new Random(11);
        List<RawFrame> turnsOnly = new ArrayList<>();
        List<RawFrame> withSamples = new ArrayList<>();
        DeviceModel device = new DeviceModel(-500 * SECOND, 65_530, CubeState.SOLVED);
        long at = 0;
        for (int i = 0; i < 2000; i++) {
            int connection = i / 700;
            if (i == 1400) {
                device = new DeviceModel(at - 3 * SECOND, 0, CubeState.SOLVED);
            }
            long deviceBoot = i < 1400 ? -500 * SECOND : at - 3 * SECOND;
            for (int sample = random.nextInt(4); sample > 0; sample--) {
                at += 20_000;
                byte[] bytes = OpenLayout.encodeOrientation((at - deviceBoot) / 1000, Quaternion.NONE);
                withSamples.add(frame(bytes, connection, at + 15_000));
            }
            at += 1000 * (30 + random.nextInt(400));
            device.turn(Turn.ofIndex(random.nextInt(18)), at);
            if (random.nextDouble() >= loss) {
                RawFrame turns = device.turns(1, connection, at + 16_000);
                turnsOnly.add(turns);
                withSamples.add(turns);
            }
        }

        List<StreamEvent> expected = new StreamDecoder(OpenLayout.profile()).accept(turnsOnly);
        List<StreamEvent> got = new StreamDecoder(OpenLayout.profile()).accept(withSamples);

        assertThat(got).filteredOn(OrientationSensed.class::isInstance).hasSizeGreaterThan(2000);
        assertThat(got)
                .filteredOn(event -> event instanceof TurnSensed || event instanceof StreamEvent.TurnsLost)
                .isEqualTo(expected.stream()
                        .filter(event -> event instanceof TurnSensed || event instanceof StreamEvent.TurnsLost)
                        .toList());
    }

    @Test
    void shouldTimeASampleByTheDeviceOnceTurnsHaveSetTheClock() {
        StreamDecoder decoder = new StreamDecoder(OpenLayout.profile());
        DeviceModel device = new DeviceModel(-500 * SECOND, 0, CubeState.SOLVED);
        List<StreamEvent> events = new ArrayList<>();
        events.addAll(decoder.accept(frame(OpenLayout.encodeOrientation(500_900, Quaternion.NONE), 0, 930_000)));
        for (int i = 1; i <= 40; i++) {
            device.turn(Turn.parse("R"), i * SECOND);
            events.addAll(decoder.accept(device.turns(1, 0, i * SECOND + 10_000 + i % 7 * 3_000)));
        }
        // Taken 200 ms before it came, before the last turn.
        byte[] late = OpenLayout.encodeOrientation(539_950, Quaternion.NONE);
        events.addAll(decoder.accept(frame(late, 0, 40 * SECOND + 150_000)));

        List<OrientationSensed> samples = events.stream()
                .filter(OrientationSensed.class::isInstance)
                .map(OrientationSensed.class::cast)
                .toList();
        assertThat(samples.get(0).deviceMicros()).isEmpty();
        assertThat(decoder.boardMicrosOf(samples.get(0))).isEqualTo(930_000);
        assertThat(decoder.boardMicrosOf(samples.get(1))).isCloseTo(39 * SECOND + 960_000, within(1_000L));
    }

    private static RawFrame frame(byte[] bytes, int connection, long arrivalMicros) {
        return new RawFrame(connection, OpenLayout.ORIENTATION, arrivalMicros * 1000, bytes);
    }
}
