package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.json.Json;
import fermata.daemon.pairing.BoardCode;
import fermata.daemon.pairing.PairedBrowsers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.databind.node.ObjectNode;

/** Pairs browsers from the board, lists and revokes them. */
@Command(
        name = "pair",
        mixinStandardHelpOptions = true,
        description = {
            "Let a browser on another machine read the pages of listen --lan, or no longer.",
            "CODE is what its page shows. Or list the browsers that may, or take it from one of them."
        })
final class PairCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @ArgGroup(multiplicity = "1")
    private What what;

    private static final class What {
        @Parameters(paramLabel = "CODE", description = "The code that the browser's page shows.")
        private String code;

        @Option(names = "--list", description = "List the browsers that were paired.")
        private boolean list;

        @Option(names = "--revoke", paramLabel = "ID", description = "Take it from the browser with this id.")
        private String revoke;
    }

    PairCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Path directory = home.home(terminal).directory();
        if (!Files.isDirectory(directory)) {
            throw new CommandFailure("there is no practice in " + directory + ", so nobody can be paired with it");
        }
        PairedBrowsers browsers = new PairedBrowsers(directory);
        if (what.list) {
            list(browsers);
        } else if (what.revoke != null) {
            revoke(browsers);
        } else if (new BoardCode(directory).approve(what.code)) {
            terminal.err().println("the browser that shows this code is paired now");
        } else {
            throw new CommandFailure("no page shows the code " + what.code
                    + " now; open a page of listen --lan in the browser, and type the code within a minute");
        }
        return 0;
    }

    private void list(PairedBrowsers browsers) {
        ObjectNode document = Json.object();
        var items = document.putArray("browsers");
        List<String> lines = new ArrayList<>();
        for (PairedBrowsers.Browser browser : browsers.list()) {
            items.addObject()
                    .put("id", browser.id())
                    .put("paired_at", browser.pairedAt())
                    .put("name", browser.name());
            lines.add(browser.id() + "  " + browser.pairedAt() + "  " + browser.name());
        }
        json.print(terminal, document, () -> lines.isEmpty() ? List.of("no browser is paired") : lines);
    }

    private void revoke(PairedBrowsers browsers) {
        if (!browsers.revoke(what.revoke)) {
            throw new CommandFailure("no browser with the id " + what.revoke + " is paired; fermata pair --list");
        }
        terminal.err().println("the browser " + what.revoke + " reads nothing here any more");
    }
}
