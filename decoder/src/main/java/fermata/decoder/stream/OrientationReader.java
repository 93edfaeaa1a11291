package fermata.decoder.stream;

import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.OrientationFrame;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout.Attitude;
import java.util.Arrays;
import java.util.OptionalLong;

/** Reads which way the core lies from a frame whose length, constants and checks are right. Stateless. */
final class OrientationReader {
    /** Rounding to few bits shortens a little; a sensor that is not ready sends zeros. */
    private static final double LENGTH_SLACK = 0.1;

    private OrientationReader() {}

    static FrameReading read(Attitude layout, byte[] frame) {
        double[] sent = layout.components().stream()
                .mapToDouble(field -> value(field, layout, frame))
                .toArray();
        double length = Math.sqrt(Arrays.stream(sent).map(c -> c * c).sum());
        if (!(Math.abs(length - 1) <= LENGTH_SLACK)) {
            return new Broken(new FrameFault(
                    FrameFault.Kind.OUT_OF_RANGE,
                    layout.envelope().name() + ".quaternion",
                    layout.components().get(0).firstByte(),
                    Arrays.toString(sent),
                    "a quaternion of length 1, not " + length));
        }
        Quaternion stated = Quaternion.scaled(sent[0], sent[1], sent[2], sent[3]);
        Quaternion ofSensor = layout.inverted() ? stated.inverse() : stated;
        OptionalLong ticks =
                layout.clock().map(c -> OptionalLong.of(c.field().read(frame))).orElse(OptionalLong.empty());
        return new OrientationFrame(
                ticks, layout.world().after(ofSensor).after(layout.sensor().inverse()));
    }

    private static double value(BitField field, Attitude layout, byte[] frame) {
        long bits = field.read(frame);
        return layout.floats() ? Float.intBitsToFloat((int) bits) : bits / (double) layout.one();
    }
}
