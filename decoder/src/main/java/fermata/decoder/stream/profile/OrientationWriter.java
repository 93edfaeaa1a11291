package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.profile.FrameLayout.Attitude;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tools.jackson.databind.node.ObjectNode;

/** Writes how a profile's frame says which way the core lies: what {@link OrientationParser} reads. Stateless. */
final class OrientationWriter {
    private static final List<String> COMPONENTS = List.of("w", "x", "y", "z");

    private OrientationWriter() {}

    static void put(ObjectNode frame, Attitude attitude) {
        ObjectNode quaternion = frame.putObject("quaternion");
        for (int i = 0; i < COMPONENTS.size(); i++) {
            ProfileWriter.putField(
                    quaternion.putObject(COMPONENTS.get(i)),
                    attitude.components().get(i));
        }
        if (!attitude.floats()) {
            quaternion.put("one", attitude.one());
        }
        frame.put("takes", attitude.inverted() ? "world-to-sensor" : "sensor-to-world");
        List<Face> axes = axes(attitude.sensor());
        ObjectNode node = frame.putObject("axes");
        node.put("x", axes.get(0).name())
                .put("y", axes.get(1).name())
                .put("z", axes.get(2).name());
        frame.put("up", up(attitude.world()));
    }

    /** The faces that the sensor's axes point out of: of the 24 ways it can sit, the one that is this rotation. */
    private static List<Face> axes(Quaternion sensor) {
        for (Face x : Face.values()) {
            for (Face y : Face.values()) {
                for (Face z : Face.values()) {
                    double[][] images =
                            Stream.of(x, y, z).map(Quaternion::axisOutOf).toArray(double[][]::new);
                    if (OrientationParser.determinant(images) > 0.5 && isSame(sensor, taking(x, y, z))) {
                        return List.of(x, y, z);
                    }
                }
            }
        }
        throw new IllegalArgumentException("the sensor sits askew, which no profile can say: " + sensor);
    }

    private static Quaternion taking(Face x, Face y, Face z) {
        return Quaternion.takingAxesTo(Quaternion.axisOutOf(x), Quaternion.axisOutOf(y), Quaternion.axisOutOf(z));
    }

    private static String up(Quaternion world) {
        return OrientationParser.ups().entrySet().stream()
                .filter(up -> isSame(world, up.getValue()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no axis of the world points up by " + world));
    }

    private static boolean isSame(Quaternion a, Quaternion b) {
        return a.angleTo(b) < 1e-6;
    }
}
