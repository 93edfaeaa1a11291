package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Reads how a profile packs a whole cube. Stateless. */
final class StateParser {
    /** The places of a cube, in the spelling that profiles use. */
    static final List<String> CORNERS = List.of("URF", "UFL", "ULB", "UBR", "DFR", "DLF", "DBL", "DRB");

    static final List<String> EDGES = List.of("UR", "UF", "UL", "UB", "DR", "DF", "DL", "DB", "FR", "FL", "BL", "BR");

    private StateParser() {}

    static StateEncoding stickers(JsonSpot spot, Envelope envelope) {
        boolean withCentres =
                spot.member("centres", "whether the six centres are sent too").flag();
        int count = withCentres ? 54 : 48;
        List<Face> faces = faces(spot.member("faces", "the order of the faces, such as \"URFDLB\""));
        Map<Long, Face> colours = new LinkedHashMap<>();
        JsonSpot colourSpot = spot.member("colours", "an object from value to face");
        colourSpot
                .entries("an object from value to face, such as {\"0\": \"U\"}")
                .forEach((key, value) -> {
                    String face = value.text("one of U R F D L B");
                    if (!key.matches("\\d{1,9}")) {
                        value.expected("a value that is a whole number as the member's name");
                    } else if (face.matches("[URFDLB]")) {
                        colours.put(Long.parseLong(key), Face.of(face.charAt(0)));
                    } else if (!face.isEmpty()) {
                        value.expected("one of U R F D L B");
                    }
                });
        if (colourSpot.isObject() && new TreeSet<>(colours.values()).size() != 6) {
            colourSpot.expected("a value for each of the six faces");
        }
        StateEncoding.Run run = FieldParser.run(spot, count, envelope.minBytes());
        return new StateEncoding.Stickers(run, faces, withCentres, colours);
    }

    private static List<Face> faces(JsonSpot spot) {
        List<Face> faces = new ArrayList<>();
        String text = spot.text("the six face letters in the order sent");
        if (text.matches("[URFDLB]{6}") && text.chars().distinct().count() == 6) {
            text.chars().forEach(letter -> faces.add(Face.of((char) letter)));
        } else if (!text.isEmpty()) {
            spot.expected("the six face letters in the order sent");
        }
        return faces;
    }

    static StateEncoding cubies(JsonSpot spot, Envelope envelope) {
        int bytes = envelope.minBytes();
        List<String> corners = places(spot.member("corners", "the eight corner places in order"), CORNERS);
        List<String> edges = places(spot.member("edges", "the twelve edge places in order"), EDGES);
        StateEncoding.Cubies cubies = new StateEncoding.Cubies(
                corners,
                edges,
                FieldParser.run(spot.member("cornerPlaces", "the run of corner numbers"), 8, bytes),
                FieldParser.run(spot.member("cornerTwists", "the run of corner twists"), 8, bytes),
                FieldParser.run(spot.member("edgePlaces", "the run of edge numbers"), 12, bytes),
                FieldParser.run(spot.member("edgeFlips", "the run of edge flips"), 12, bytes));
        spot.close();
        return cubies;
    }

    /** Places in any order, each spelled with any of its faces first, going round clockwise. */
    private static List<String> places(JsonSpot spot, List<String> all) {
        List<String> names = new ArrayList<>();
        TreeSet<String> missing = new TreeSet<>(all);
        for (JsonSpot item : spot.items(all.size())) {
            String name = item.text("a place of the cube");
            String standard = all.stream()
                    .filter(p -> (p + p).contains(name) && name.length() == p.length())
                    .findFirst()
                    .orElse("");
            if (standard.isEmpty() && !name.isEmpty()) {
                item.expected("one of " + String.join(" ", all) + " (clockwise, any face first)");
            } else if (!missing.remove(standard) && !name.isEmpty()) {
                item.expected("each place once");
            }
            names.add(name);
        }
        if (names.size() > all.size()) {
            spot.expected(all.size() + " places");
        }
        return names;
    }
}
