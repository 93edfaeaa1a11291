package fermata.analysis.method;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One of the public reconstructions of {@code fixtures/solves/solves.jsonl} as the centres feel it. The analysis has no
 * JSON reader; the file's lines are flat enough for two patterns, and a line that does not fit fails.
 */
public record Reconstruction(String id, String method, CubeState start, List<Turn> turns, List<Line> lines) {
    /** A line of the reconstruction: its stage, the finer label or nothing, and its turns, half-open. */
    public record Line(String stage, String sub, int from, int to) {}

    private static final Pattern HEAD = Pattern.compile(
            "\\{\"id\": \"(\\w+)\", .*?\"method\": \"(\\w+)\", \"scramble\": \"([^\"]+)\", \"lines\": \\[(.*?)\\].*");
    private static final Pattern LINE =
            Pattern.compile("\\{\"moves\": \"([^\"]*)\", \"stage\": \"([^\"]+)\"(?:, \"sub\": \"([^\"]*)\")?\\}");

    /** All of them, in the file's order. */
    public static List<Reconstruction> all() {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(
                        Reconstruction.class.getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")),
                StandardCharsets.UTF_8))) {
            return reader.lines().map(Reconstruction::read).toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Reconstruction read(String json) {
        Matcher head = HEAD.matcher(json);
        if (!head.matches()) {
            throw new IllegalStateException("not a reconstruction: " + json);
        }
        List<Turn> turns = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        Orientation hold = Orientation.IDENTITY;
        Matcher line = LINE.matcher(head.group(4));
        while (line.find()) {
            CoreWalk walk = Sequence.parse(line.group(1)).walk(hold);
            hold = walk.end();
            int from = turns.size();
            turns.addAll(walk.turns());
            lines.add(new Line(line.group(2), line.group(3) == null ? "" : line.group(3), from, turns.size()));
        }
        CubeState start = Sequence.parse(head.group(3)).state();
        return new Reconstruction(head.group(1), head.group(2), start, turns, lines);
    }
}
