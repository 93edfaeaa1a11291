package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.profile.FrameLayout.Attitude;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads how a profile's frame says which way the core lies. Stateless. */
final class OrientationParser {
    private static final int FLOAT_BITS = 32;
    private static final String AXES = "the face each sensor axis points out of, such as {\"x\": \"R\", ...}";

    private OrientationParser() {}

    static Attitude orientation(JsonSpot spot, Envelope envelope) {
        JsonSpot quaternion = spot.member("quaternion", "an object with the fields w, x, y, z");
        boolean floats = quaternion.optional("one").isEmpty();
        List<BitField> components = Stream.of("w", "x", "y", "z")
                .map(name -> component(quaternion.member(name, "a field of the quaternion"), envelope, floats))
                .toList();
        long most = components.stream()
                .mapToLong(field -> 1L << (field.widthBits() - 1))
                .min()
                .orElseThrow();
        long one = quaternion.optional("one").map(s -> s.integer(1, most)).orElse(1L);
        quaternion.close();
        boolean inverted = spot.member("takes", "sensor-to-world or world-to-sensor")
                .choice(Map.of("sensor-to-world", false, "world-to-sensor", true), false);
        Quaternion sensor = axes(spot.member("axes", AXES));
        Quaternion world = up(spot.member("up", "the axis of the world that points up"));
        return new Attitude(
                envelope,
                spot.optional("clock").map(s -> FrameParser.clock(s, envelope)),
                components,
                floats ? 0 : one,
                inverted,
                sensor,
                world);
    }

    private static BitField component(JsonSpot spot, Envelope envelope, boolean floats) {
        BitField field = FieldParser.field(spot, envelope.minBytes());
        if (floats && (field.widthBits() != FLOAT_BITS || field.signed())) {
            spot.expected("32 bits without a sign of their own: without \"one\" the components are IEEE 754 floats");
        } else if (!floats && !field.signed()) {
            spot.expected("a signed field: with \"one\" the components are whole numbers of either sign");
        }
        return field;
    }

    /** The rotation that takes the sensor's axes to the core's. */
    private static Quaternion axes(JsonSpot spot) {
        List<Face> faces = new ArrayList<>();
        for (String axis : List.of("x", "y", "z")) {
            JsonSpot member = spot.member(axis, "the face that the sensor's " + axis + " axis points out of");
            String text = member.text("one of U R F D L B");
            if (text.matches("[URFDLB]")) {
                faces.add(Face.of(text.charAt(0)));
            } else if (!text.isEmpty()) {
                member.expected("one of U R F D L B");
            }
        }
        spot.close();
        if (faces.size() < 3) {
            return Quaternion.NONE;
        }
        double[][] images = faces.stream().map(Quaternion::axisOutOf).toArray(double[][]::new);
        if (faces.stream().map(Face::axis).distinct().count() < 3) {
            spot.expected("three faces at right angles to each other");
            return Quaternion.NONE;
        } else if (determinant(images) < 0) {
            spot.expected("a right-handed set, and so z out of " + faces.get(2).opposite() + " if x and y are right");
            return Quaternion.NONE;
        }
        return Quaternion.takingAxesTo(images[0], images[1], images[2]);
    }

    /** Above 0 if the axes are right-handed. */
    static double determinant(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }

    /** A rotation that takes the world's up to y; where it takes north is nobody's concern. */
    private static Quaternion up(JsonSpot spot) {
        return spot.choice(ups(), Quaternion.NONE);
    }

    /** By the axis that points up, a rotation that takes it to y. */
    static Map<String, Quaternion> ups() {
        double quarter = Math.PI / 2;
        Map<String, Quaternion> ups = new HashMap<>();
        ups.put("y", Quaternion.NONE);
        ups.put("-y", Quaternion.about(1, 0, 0, 2 * quarter));
        ups.put("z", Quaternion.about(1, 0, 0, -quarter));
        ups.put("-z", Quaternion.about(1, 0, 0, quarter));
        ups.put("x", Quaternion.about(0, 0, 1, quarter));
        ups.put("-x", Quaternion.about(0, 0, 1, -quarter));
        return ups;
    }
}
