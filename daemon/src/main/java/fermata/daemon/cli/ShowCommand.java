package fermata.daemon.cli;

import fermata.analysis.hand.HandReader;
import fermata.analysis.hand.StatedHand;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.CubeNet;
import fermata.daemon.cli.text.SolveText;
import fermata.daemon.cli.text.Words;
import fermata.daemon.json.Json;
import fermata.daemon.json.SolveView;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Corrections;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.NotationException;
import fermata.decoder.notation.Sequence;
import java.math.BigDecimal;
import java.nio.file.Path;
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

    @Option(
            names = "--margin",
            paramLabel = "SECONDS",
            description =
                    "A pair counts as found in time from so many seconds before it was needed, 0 to 10; else 0.3.")
    private BigDecimal margin;

    @Option(names = "--core", description = "Name turns by the centres, as they were heard.")
    private boolean core;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Keep the score in a new file: FILE.html is a page that needs no board, FILE.svg a picture.")
    private Path out;

    @Option(
            names = "--hand",
            paramLabel = "WORDS",
            description = {
                "Say what the hand did, in its notation from the hold of the centres (U up, F in front), such as",
                "\"x2 r U' z R\". It must make the turns that were heard. It is kept, and teaches how your other",
                "solves are read. Empty words take it back."
            })
    private String hand;

    ShowCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        SolveView solve = hand == null ? home.read(terminal, this::ask) : corrected(hand);
        if (out != null) {
            KeptScore.write(terminal, solve, out);
        } else if (turn == null) {
            json.print(terminal, solve, () -> SolveText.lines(solve, core));
        } else {
            showCube(solve, turn);
        }
        return 0;
    }

    private SolveView ask(Practice practice) {
        return (margin == null ? practice.solve(id) : practice.solve(id, marginMicros()))
                .orElseThrow(() ->
                        new CommandFailure("there is no solve \"" + id + "\"; list them with: fermata solves --home "
                                + home.home(terminal).directory()));
    }

    private long marginMicros() {
        if (margin.signum() < 0 || margin.compareTo(BigDecimal.TEN) > 0) {
            throw new CommandFailure("--margin " + margin + " is not in 0..10 seconds");
        }
        return margin.movePointRight(6).longValue();
    }

    private SolveView corrected(String words) {
        Sequence sequence;
        try {
            sequence = Sequence.parse(words);
        } catch (NotationException e) {
            throw new CommandFailure("--hand: " + e.getMessage(), e);
        }
        home.read(terminal, this::ask);
        try (Store store = HomeOption.write(home.home(terminal), terminal)) {
            Practice practice = new Practice(store);
            SolveView solve = ask(practice);
            if (solve.holds().known().equals("untold")) {
                throw new CommandFailure("--hand: "
                        + (solve.gaps().isEmpty()
                                ? "solve " + id + " has more than " + HandReader.MOST_TURNS
                                        + " turns; no hand is read in it"
                                : "turns of solve " + id + " were lost, so no words can make them all"));
            }
            Corrections corrections = new Corrections(store);
            if (words.isBlank()) {
                corrections.takeBack(solve);
            } else if (corrections.state(solve, sequence) instanceof StatedHand.Differs differs) {
                throw new CommandFailure(difference(differs));
            }
            return ask(practice);
        }
    }

    private String difference(StatedHand.Differs differs) {
        String where = "--hand: turn " + differs.turn() + " of solve " + id + " (from 0, by the centres)";
        if (differs.heard().isEmpty()) {
            return "--hand: the words make " + differs.said() + " by the centres after the last turn of solve " + id
                    + ", which has " + Words.counted(differs.turn(), "turn");
        }
        return where + " was " + differs.heard() + ", but the words "
                + (differs.said().isEmpty() ? "end before it" : "make " + differs.said() + " there");
    }

    private void showCube(SolveView solve, int turnsDone) {
        int turns = solve.turns().size();
        if (turnsDone < 0 || turnsDone > turns) {
            throw new CommandFailure("--turn " + turnsDone + " is not in 0.." + turns + ": solve " + id + " has "
                    + Words.counted(turns, "turn"));
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
