package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.stream.profile.StateEncoding.Cubies;
import fermata.decoder.stream.profile.StateEncoding.Run;
import fermata.decoder.stream.profile.StateEncoding.Stickers;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tools.jackson.databind.node.ObjectNode;

/** Writes how a profile packs a whole cube: what {@link StateParser} reads. Stateless. */
final class StateWriter {
    private StateWriter() {}

    static void put(ObjectNode frame, StateEncoding encoding) {
        if (encoding instanceof Stickers stickers) {
            ObjectNode node = frame.putObject("stickers");
            putRun(node, stickers.run());
            node.put("centres", stickers.withCentres());
            node.put("faces", stickers.faces().stream().map(Face::name).collect(Collectors.joining()));
            ObjectNode colours = node.putObject("colours");
            new TreeMap<>(stickers.colours()).forEach((value, face) -> colours.put(value.toString(), face.name()));
        } else if (encoding instanceof Cubies cubies) {
            ObjectNode node = frame.putObject("cubies");
            cubies.cornerNames().forEach(node.putArray("corners")::add);
            cubies.edgeNames().forEach(node.putArray("edges")::add);
            putRun(node.putObject("cornerPlaces"), cubies.cornerPlaces());
            putRun(node.putObject("cornerTwists"), cubies.cornerTwists());
            putRun(node.putObject("edgePlaces"), cubies.edgePlaces());
            putRun(node.putObject("edgeFlips"), cubies.edgeFlips());
        }
    }

    private static void putRun(ObjectNode node, Run run) {
        ProfileWriter.putField(node, run.first());
        node.put("stride", run.strideBits());
    }
}
