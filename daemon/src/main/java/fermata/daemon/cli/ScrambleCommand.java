package fermata.daemon.cli;

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
        description = "Print scrambles that lead to random states, one a line.")
final class ScrambleCommand implements Callable<Integer> {
    private static final int MOST = 1000;

    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Option(names = "--count", paramLabel = "N", description = "How many. Default: ${DEFAULT-VALUE}.")
    private int count = 1;

    ScrambleCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (count < 1 || count > MOST) {
            throw new CommandFailure("--count " + count + " is not in 1.." + MOST);
        }
        SecureRandom random = new SecureRandom();
        TwoPhaseSolver solver = new TwoPhaseSolver();
        List<String> scrambles = new ArrayList<>();
        for (int made = 0; made < count; made++) {
            scrambles.add(Sequence.ofTurns(solver.scrambleTo(RandomStates.forScramble(random)))
                    .toString());
        }
        json.print(terminal, Map.of("scrambles", scrambles), () -> scrambles);
        return 0;
    }
}
