package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Legality;
import fermata.decoder.notation.Sequence;
import fermata.decoder.solver.RandomStates;
import fermata.decoder.solver.TwoPhaseSolver;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Makes scrambles; the pages have them made by a process of its own. */
@Command(
        name = "scramble",
        mixinStandardHelpOptions = true,
        description = "Print scrambles that lead to random states, one a line, or the one that leads to a given state.")
final class ScrambleCommand implements Callable<Integer> {
    private static final int MOST = 1000;

    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Option(names = "--count", paramLabel = "N", description = "How many. Default: ${DEFAULT-VALUE}.")
    private int count = 1;

    @Option(
            names = "--to",
            paramLabel = "FACELETS",
            description = "The state to lead to, as show --turn N --json prints it: 54 face letters.")
    private String to;

    ScrambleCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (count < 1 || count > MOST) {
            throw new CommandFailure("--count " + count + " is not in 1.." + MOST);
        }
        List<String> scrambles = to == null ? random(count) : List.of(scramble(wanted()));
        json.print(terminal, Map.of("scrambles", scrambles), () -> scrambles);
        return 0;
    }

    private static List<String> random(int count) {
        SecureRandom random = new SecureRandom();
        List<String> scrambles = new ArrayList<>();
        for (int made = 0; made < count; made++) {
            scrambles.add(scramble(RandomStates.forScramble(random)));
        }
        return scrambles;
    }

    private static String scramble(CubeState state) {
        return Sequence.ofTurns(new TwoPhaseSolver().scrambleTo(state)).toString();
    }

    private CubeState wanted() {
        try {
            CubeState state = Facelets.read(to);
            if (state.legality() != Legality.LEGAL) {
                throw new CommandFailure("--to " + to + " cannot be reached by turning: "
                        + state.legality().reason());
            }
            return state;
        } catch (IllegalArgumentException e) {
            throw new CommandFailure("--to: " + e.getMessage(), e);
        }
    }
}
