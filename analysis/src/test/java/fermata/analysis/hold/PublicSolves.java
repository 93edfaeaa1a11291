package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The public reconstructions with their stated holds; sources in PROVENANCE.tsv beside them. Walkthroughs left out. */
public final class PublicSolves {
    private static final String PLACE = "/fermata/fixtures/solves/solves.jsonl";

    /**
     * One reconstruction.
     *
     * @param id as in the file
     * @param hands one, two or unknown
     * @param method as in the file
     * @param example one-handed ones count as left-handed, as most of them are
     */
    public record Solve(String id, String hands, String method, HoldExample example) {}

    private PublicSolves() {}

    /** All of them, in the file's order. */
    public static List<Solve> all() {
        ObjectMapper mapper = new ObjectMapper();
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(PublicSolves.class.getResourceAsStream(PLACE), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .map(mapper::readTree)
                    .filter(solve -> !solve.path("note").asString("").equals("walkthrough"))
                    .map(PublicSolves::read)
                    .toList();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    /** The examples alone. */
    public static List<HoldExample> examples() {
        return all().stream().map(Solve::example).toList();
    }

    private static Solve read(JsonNode solve) {
        String moves = StreamSupport.stream(solve.get("lines").spliterator(), false)
                .map(line -> line.get("moves").asString())
                .collect(Collectors.joining(" "));
        String hands = solve.get("hands").asString();
        HoldExample example = new HoldExample(
                CubeState.SOLVED.apply(Sequence.parse(solve.get("scramble").asString())
                        .walk(Orientation.IDENTITY)
                        .turns()),
                HoldTrack.of(Sequence.parse(moves), Orientation.IDENTITY),
                hands.equals("one") ? Hand.LEFT : Hand.TWO,
                solve.get("group").asString());
        return new Solve(solve.get("id").asString(), hands, solve.get("method").asString(), example);
    }
}
