package fermata.decoder.madeup;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.List;
import java.util.stream.Stream;

/** The stickers at a place of the cube that is named by its faces. */
final class PlaceStickers {
    static final List<String> CORNERS =
            Stream.of(Corner.values()).map(Enum::name).toList();
    static final List<String> EDGES = Stream.of(Edge.values()).map(Enum::name).toList();

    private PlaceStickers() {}

    /** What shows there, in the order of the name's faces. */
    static String shown(String place, String letters) {
        StringBuilder shown = new StringBuilder();
        for (char letter : place.toCharArray()) {
            shown.append(letters.charAt(sticker(place, Face.of(letter))));
        }
        return shown.toString();
    }

    private static int sticker(String place, Face face) {
        List<Face> faces = place.chars().mapToObj(c -> Face.of((char) c)).toList();
        if (place.length() == 3) {
            Corner corner = Stream.of(Corner.values())
                    .filter(c -> c.faces().containsAll(faces))
                    .findFirst()
                    .orElseThrow();
            return corner.sticker(corner.faces().indexOf(face));
        }
        Edge edge = Stream.of(Edge.values())
                .filter(e -> e.faces().containsAll(faces))
                .findFirst()
                .orElseThrow();
        return edge.sticker(edge.faces().indexOf(face));
    }
}
