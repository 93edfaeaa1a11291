package fermata.daemon.cli.asked;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;

/** Who practises with which hand on which cube. */
public final class SolverOptions {
    private static final String UNKNOWN = "unknown";

    @Option(names = "--solver", paramLabel = "NAME", description = "Who practises. Stays in the home.")
    private String solver = UNKNOWN;

    @Option(names = "--cube", paramLabel = "NAME", description = "What the cube is called. Stays in the home.")
    private String cube = UNKNOWN;

    @Option(
            names = "--hand",
            paramLabel = "HAND",
            description = "Which hand turns: left, right or two. Default: unknown.")
    private String hand = Hand.UNKNOWN.written();

    /** These options as words, those that were given. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        Map<String, String> values = new LinkedHashMap<>();
        values.put("--solver", solver);
        values.put("--cube", cube);
        values.put("--hand", hand);
        values.forEach((name, value) -> {
            if (!value.equals(UNKNOWN)) {
                words.addAll(List.of(name, value));
            }
        });
        return words;
    }

    public Origin origin() {
        try {
            return new Origin(cube, solver, Hand.of(hand));
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(e.getMessage(), e);
        }
    }
}
