package fermata.daemon.turnfile;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldTrack;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.JsonLine;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * A reconstruction with the holds that its writer states: to learn from, or to be held against.
 *
 * @param id as the writer calls it
 * @param hands {@code one}, {@code two} or {@code unknown}
 * @param method as the writer calls it
 * @param walkthrough whether it is a teaching example, not a solve as it was done
 * @param example turns, holds, hand and group; the turns are stripped to the core frame. One-handed solves count as
 *     left-handed, as most of them are; those of which nobody says count as two-handed
 */
public record WrittenSolve(String id, String hands, String method, boolean walkthrough, HoldExample example) {
    private static final List<String> NOTES = List.of("as executed", "walkthrough");

    /**
     * Reads a file of reconstructions, one a line (docs/formats.md).
     *
     * @param name as the user named it, for errors
     * @param bytes all of it
     * @throws BadLineException for the first line that is wrong
     */
    public static List<WrittenSolve> read(String name, byte[] bytes) {
        List<WrittenSolve> solves = new ArrayList<>();
        new JsonLines(name, new ByteArrayInputStream(bytes)).forEachRemaining(line -> solves.add(read(line)));
        if (solves.isEmpty()) {
            throw new BadLineException(name, 1, "", "missing", "a reconstruction (with \"scramble\" and \"lines\")");
        }
        return solves;
    }

    private static WrittenSolve read(JsonLine line) {
        if (!Reconstruction.is(line)) {
            throw line.bad("a reconstruction (with \"scramble\" and \"lines\")");
        }
        String hands = line.oneOf("hands", Reconstruction.HANDS);
        Sequence scramble = line.read("scramble", "moves in WCA notation", Sequence::parse);
        HoldTrack track = HoldTrack.of(moves(line), Orientation.IDENTITY);
        CubeState start = scramble.state();
        if (track.size() == 0) {
            throw line.bad("lines", "at least one turn");
        }
        if (!start.apply(track.turns()).isSolved()) {
            throw line.bad("lines", "moves that solve the cube that the scramble leaves");
        }
        boolean walkthrough = line.has("note") && line.oneOf("note", NOTES).equals("walkthrough");
        String id = line.optionalText("id").orElse("line " + line.number());
        HoldExample example = new HoldExample(
                start,
                track,
                hands.equals("one") ? Hand.LEFT : Hand.TWO,
                line.optionalText("group").orElse("line " + line.number()));
        return new WrittenSolve(id, hands, line.text("method"), walkthrough, example);
    }

    private static Sequence moves(JsonLine line) {
        List<Move> moves = new ArrayList<>();
        for (JsonLine written : line.objects("lines")) {
            moves.addAll(written.read("moves", "moves in WCA notation", Sequence::parse)
                    .moves());
        }
        return new Sequence(moves);
    }
}
