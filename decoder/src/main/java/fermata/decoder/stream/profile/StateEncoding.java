package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** How a whole cube is packed into a frame. */
public sealed interface StateEncoding {
    /** The fields that come first in the profile's account of it. */
    Run first();

    /**
     * What each kind is to one who must have an answer to both.
     *
     * @param <E> what can go wrong
     */
    interface Visitor<T, E extends Exception> {
        T stickers(Stickers stickers) throws E;

        T cubies(Cubies cubies) throws E;
    }

    /** Asks the visitor by the kind. */
    <T, E extends Exception> T visit(Visitor<T, E> visitor) throws E;

    /**
     * One field a sticker.
     *
     * @param run one field a sticker
     * @param faces order of the faces
     * @param withCentres 54 stickers, else 48: row by row on each face, the centre left out
     * @param colours whose colour each value is
     */
    record Stickers(Run run, List<Face> faces, boolean withCentres, Map<Long, Face> colours) implements StateEncoding {
        public Stickers {
            Objects.requireNonNull(run, "run");
            faces = List.copyOf(faces);
            colours = Map.copyOf(colours);
        }

        @Override
        public Run first() {
            return run;
        }

        @Override
        public <T, E extends Exception> T visit(Visitor<T, E> visitor) throws E {
            return visitor.stickers(this);
        }
    }

    /**
     * Which cubie sits in each place and how it is turned, one run of fields for each of the four.
     *
     * @param cornerNames places of corners, in the order of the fields; also numbers the cubies. Each is three faces
     *     clockwise seen from outside, the reference face first
     * @param edgeNames places of edges; two faces, the reference face first
     * @param cornerPlaces which corner sits in each place
     * @param cornerTwists 0..2 clockwise thirds by which its first sticker is away from the first face of its place
     * @param edgePlaces which edge sits in each place
     * @param edgeFlips 1 if its first sticker is not on the first face of its place
     */
    record Cubies(
            List<String> cornerNames,
            List<String> edgeNames,
            Run cornerPlaces,
            Run cornerTwists,
            Run edgePlaces,
            Run edgeFlips)
            implements StateEncoding {
        public Cubies {
            cornerNames = List.copyOf(cornerNames);
            edgeNames = List.copyOf(edgeNames);
            Objects.requireNonNull(cornerPlaces, "cornerPlaces");
            Objects.requireNonNull(cornerTwists, "cornerTwists");
            Objects.requireNonNull(edgePlaces, "edgePlaces");
            Objects.requireNonNull(edgeFlips, "edgeFlips");
        }

        @Override
        public Run first() {
            return cornerPlaces;
        }

        @Override
        public <T, E extends Exception> T visit(Visitor<T, E> visitor) throws E {
            return visitor.cubies(this);
        }
    }

    /** Equal fields one after another. */
    record Run(BitField first, int strideBits) {
        public Run {
            Objects.requireNonNull(first, "first");
        }

        /** Field number {@code index}, from 0. */
        public BitField at(int index) {
            return first.shifted(index * strideBits);
        }
    }
}
