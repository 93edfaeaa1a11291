package fermata.daemon.cli;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import picocli.CommandLine.Option;

/** Who practises with which hand on which cube. */
final class SolverOptions {
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

    Origin origin() {
        try {
            return new Origin(cube, solver, Hand.of(hand));
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(e.getMessage(), e);
        }
    }
}
