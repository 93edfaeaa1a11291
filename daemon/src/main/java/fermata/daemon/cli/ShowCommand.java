package fermata.daemon.cli;

import fermata.daemon.json.Json;
import fermata.daemon.json.SolveView;
import fermata.daemon.practice.Practice;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Turn;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.databind.node.ObjectNode;

/** Shows one solve. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = "Show a solve turn by turn, or the cube as it was at one turn.")
final class ShowCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "ID", description = "The solve, as solves lists it, such as 3-412.")
    private String id;

    @Option(
            names = "--turn",
            paramLabel = "N",
            description = "Print the cube after so many turns of the solve; 0 is where it began.")
    private Integer turn;

    ShowCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        SolveView solve = home.read(terminal, this::ask);
        if (turn == null) {
            json.print(terminal, solve, () -> SolveText.lines(solve));
        } else {
            showCube(solve, turn);
        }
        return 0;
    }

    private SolveView ask(Practice practice) {
        return practice.solve(id)
                .orElseThrow(() ->
                        new CommandFailure("there is no solve \"" + id + "\"; list them with: fermata solves --home "
                                + home.home(terminal).directory()));
    }

    private void showCube(SolveView solve, int turnsDone) {
        int turns = solve.turns().size();
        if (turnsDone < 0 || turnsDone > turns) {
            throw new CommandFailure("--turn " + turnsDone + " is not in 0.." + turns + ": solve " + id + " has "
                    + NightText.counted(turns, "turn"));
        }
        CubeState state = Facelets.read(solve.startFacelets());
        for (SolveView.Turn done : solve.turns().subList(0, turnsDone)) {
            state = state.apply(Turn.parse(done.core()));
        }
        ObjectNode document = Json.object();
        document.put("id", id).put("turn", turnsDone).put("facelets", state.facelets());
        String facelets = state.facelets();
        json.print(terminal, document, () -> CubeNet.lines(solve, turnsDone, facelets));
    }
}
