package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Names for the colours of stickers. A name stays; {@code #rrggbb} gets the nearest of the names, by the plain
 * distance of red, green and blue: the six sides of a cube lie far apart, so no finer measure is needed. Stateless.
 */
public final class ColourNames {
    /** CSS Color Module Level 4, named colours; orange and green in the shades that stickers have. */
    private static final List<Named> NAMES = List.of(
            new Named("white", 255, 255, 255),
            new Named("yellow", 255, 220, 0),
            new Named("orange", 255, 140, 0),
            new Named("red", 210, 20, 30),
            new Named("green", 20, 150, 70),
            new Named("blue", 20, 70, 200),
            new Named("black", 0, 0, 0),
            new Named("grey", 128, 128, 128),
            new Named("pink", 255, 130, 190),
            new Named("purple", 128, 0, 128));

    private record Named(String name, int red, int green, int blue) {
        private int distance(int rgb) {
            int dr = red - (rgb >> 16 & 0xFF);
            int dg = green - (rgb >> 8 & 0xFF);
            int db = blue - (rgb & 0xFF);
            return dr * dr + dg * dg + db * db;
        }
    }

    private ColourNames() {}

    /** The names of the colours of a cube's centres, as far as its profile gives them. */
    public static Map<Face, String> ofFaces(StreamProfile profile) {
        Map<Face, String> named = new EnumMap<>(Face.class);
        profile.colours().forEach((face, colour) -> named.put(face, of(colour)));
        return named;
    }

    static String of(String colour) {
        if (!colour.matches("#[0-9a-fA-F]{6}")) {
            return colour;
        }
        int rgb = Integer.parseInt(colour.substring(1), 16);
        return NAMES.stream()
                .min(Comparator.comparingInt(named -> named.distance(rgb)))
                .map(Named::name)
                .orElse(colour);
    }
}
