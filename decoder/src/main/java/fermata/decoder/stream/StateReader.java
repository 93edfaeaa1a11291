package fermata.decoder.stream;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.StateFrame;
import fermata.decoder.stream.profile.FrameLayout.State;
import fermata.decoder.stream.profile.StateEncoding;
import fermata.decoder.stream.profile.StateEncoding.Cubies;
import fermata.decoder.stream.profile.StateEncoding.Run;
import fermata.decoder.stream.profile.StateEncoding.Stickers;
import java.util.List;
import java.util.OptionalLong;

/** Reads the whole cube from a frame whose length, constants and checks are right. Stateless. */
final class StateReader {
    /** Carries a fault out of the loops over stickers; never leaves this class. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient FrameFault fault;

        Unreadable(FrameFault fault) {
            super(fault.message());
            this.fault = fault;
        }
    }

    /** Reads the letters of the stickers out of a frame. */
    private record Letters(byte[] frame, String name) implements StateEncoding.Visitor<String, Unreadable> {
        @Override
        public String stickers(Stickers stickers) throws Unreadable {
            return StateReader.stickers(stickers, frame, name);
        }

        @Override
        public String cubies(Cubies cubies) throws Unreadable {
            return StateReader.cubies(cubies, frame, name);
        }
    }

    private StateReader() {}

    static FrameReading read(State layout, byte[] frame) {
        OptionalLong sequence =
                layout.sequence().map(f -> OptionalLong.of(f.read(frame))).orElse(OptionalLong.empty());
        OptionalLong ticks =
                layout.clock().map(c -> OptionalLong.of(c.field().read(frame))).orElse(OptionalLong.empty());
        String name = layout.envelope().name();
        try {
            String letters = layout.encoding().visit(new Letters(frame, name));
            return new StateFrame(
                    sequence, ticks, state(letters, layout.encoding().first(), name));
        } catch (Unreadable e) {
            return new Broken(e.fault);
        }
    }

    private static CubeState state(String letters, Run first, String name) throws Unreadable {
        try {
            return Facelets.read(letters);
        } catch (IllegalArgumentException e) {
            throw new Unreadable(new FrameFault(
                    FrameFault.Kind.UNKNOWN_STATE,
                    name,
                    first.first().firstByte(),
                    letters,
                    "a cube with each piece once: " + e.getMessage()));
        }
    }

    private static String stickers(Stickers encoding, byte[] frame, String name) throws Unreadable {
        char[] letters = centres();
        int sent = 0;
        for (Face face : encoding.faces()) {
            for (int place = 0; place < 9; place++) {
                if (place == 4 && !encoding.withCentres()) {
                    continue;
                }
                long value = encoding.run().at(sent).read(frame);
                Face colour = encoding.colours().get(value);
                if (colour == null) {
                    throw outside(encoding.run(), sent, value, name + ".stickers", "a colour of the profile");
                }
                letters[9 * face.ordinal() + place] = colour.name().charAt(0);
                sent++;
            }
        }
        return new String(letters);
    }

    private static String cubies(Cubies encoding, byte[] frame, String name) throws Unreadable {
        char[] letters = centres();
        for (int i = 0; i < 8; i++) {
            int cubie = below(8, encoding.cornerPlaces(), i, frame, name + ".cubies.cornerPlaces");
            int twist = below(3, encoding.cornerTwists(), i, frame, name + ".cubies.cornerTwists");
            String place = encoding.cornerNames().get(i);
            for (int which = 0; which < 3; which++) {
                letters[cornerSticker(place, (which + twist) % 3)] =
                        encoding.cornerNames().get(cubie).charAt(which);
            }
        }
        for (int i = 0; i < 12; i++) {
            int cubie = below(12, encoding.edgePlaces(), i, frame, name + ".cubies.edgePlaces");
            int flip = below(2, encoding.edgeFlips(), i, frame, name + ".cubies.edgeFlips");
            String place = encoding.edgeNames().get(i);
            for (int which = 0; which < 2; which++) {
                letters[edgeSticker(place, which ^ flip)] =
                        encoding.edgeNames().get(cubie).charAt(which);
            }
        }
        return new String(letters);
    }

    private static char[] centres() {
        char[] letters = new char[54];
        for (Face face : Face.values()) {
            letters[9 * face.ordinal() + 4] = face.name().charAt(0);
        }
        return letters;
    }

    private static int cornerSticker(String place, int which) {
        List<Face> faces = place.chars().mapToObj(c -> Face.of((char) c)).toList();
        for (Corner corner : Corner.values()) {
            if (corner.faces().containsAll(faces)) {
                return corner.sticker(corner.faces().indexOf(faces.get(which)));
            }
        }
        throw new IllegalStateException("a checked profile names the corner " + place);
    }

    private static int edgeSticker(String place, int which) {
        List<Face> faces = place.chars().mapToObj(c -> Face.of((char) c)).toList();
        for (Edge edge : Edge.values()) {
            if (edge.faces().containsAll(faces)) {
                return edge.sticker(edge.faces().indexOf(faces.get(which)));
            }
        }
        throw new IllegalStateException("a checked profile names the edge " + place);
    }

    private static int below(int limit, Run run, int index, byte[] frame, String name) throws Unreadable {
        long value = run.at(index).read(frame);
        if (value < 0 || value >= limit) {
            throw outside(run, index, value, name, "0.." + (limit - 1));
        }
        return (int) value;
    }

    private static Unreadable outside(Run run, int index, long value, String name, String expected) {
        return new Unreadable(new FrameFault(
                FrameFault.Kind.UNKNOWN_STATE,
                name + "[" + index + "]",
                run.at(index).firstByte(),
                Long.toString(value),
                expected));
    }
}
