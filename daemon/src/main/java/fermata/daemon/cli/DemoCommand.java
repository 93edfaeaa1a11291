package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.PortNumber;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.NightText;
import fermata.daemon.cli.text.Words;
import fermata.daemon.demo.Demo;
import fermata.daemon.demo.DemoListener;
import fermata.daemon.demo.DemoPlan;
import fermata.daemon.demo.DemoResult;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.web.PageServer;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the whole way without a cube. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Record an evening from a virtual cube, sum it up, serve its pages.",
            "Bus, capture and store are the real ones; only cube and solver are made up."
        })
final class DemoCommand implements Callable<Integer> {
    private static final Duration LOOK_EVERY = Duration.ofMillis(200);

    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Option(names = "--once", description = "Exit after the summary; serve no pages.")
    private boolean once;

    @Option(names = "--solves", paramLabel = "N", description = "Solves of the evening. Default: ${DEFAULT-VALUE}.")
    private int solves = 12;

    @Option(names = "--seed", paramLabel = "N", description = "Decides the evening. Default: ${DEFAULT-VALUE}.")
    private long seed = 1;

    @Option(names = "--speed", paramLabel = "X", description = "Times real time. Default: ${DEFAULT-VALUE}.")
    private double speed = 100;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            converter = PortNumber.class,
            description = "Where the pages are. Default: ${DEFAULT-VALUE}.")
    private int port = PageServer.DEFAULT_PORT;

    DemoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        DemoPlan plan = plan();
        try (StopSignal stop = StopSignal.install();
                Store store = HomeOption.write(freshHome(), terminal)) {
            if (once) {
                run(store, plan, stop);
                return 0;
            }
            // The pages come first: a taken port is said before the evening, and they fill while it is recorded.
            try (PageServer pages = Pages.start(new Practice(store), port)) {
                run(store, plan, stop);
                terminal.err().println("the pages are at " + pages.url() + " until Ctrl-C");
                while (!stop.await(LOOK_EVERY)) {
                    // The server's own threads answer.
                }
            }
        }
        return 0;
    }

    private DemoPlan plan() {
        try {
            return new DemoPlan(solves, seed, speed, terminal.clock());
        } catch (IllegalArgumentException e) {
            throw new CommandFailure("--" + e.getMessage(), e);
        }
    }

    private Home freshHome() {
        if (home.named().isPresent()) {
            Home named = home.named().get();
            if (Files.exists(named.database())) {
                throw new CommandFailure("there is a practice in " + named.directory()
                        + " already; the demo wants a fresh --home and mixes with nobody's practice");
            }
            return named;
        }
        try {
            return new Home(Files.createTempDirectory("fermata-demo-"));
        } catch (IOException e) {
            throw new CommandFailure(
                    "cannot make a directory for the demo: " + FileFaults.reason(e) + "; name one with --home", e);
        }
    }

    private void run(Store store, DemoPlan plan, StopSignal stop) {
        terminal.err()
                .println("an evening in the galley of a small ferry, recorded from a virtual cube into "
                        + store.home().directory());
        DemoResult result = new Demo(store, plan, new Progress(terminal)).run(() -> stop.await(Duration.ZERO));
        json.print(terminal, result, () -> text(result, new Practice(store)));
        terminal.out().flush();
    }

    private static List<String> text(DemoResult result, Practice practice) {
        List<String> lines = new ArrayList<>();
        List<NightsView.Item> nights = practice.nights().nights();
        if (!nights.isEmpty()) {
            lines.add("");
            lines.addAll(NightText.lines(
                    practice.night(WrittenDay.parse(nights.get(0).day()), Over.NIGHT)
                            .orElseThrow()));
        }
        lines.add("");
        lines.add("Recorded: " + Words.counted(result.frames(), "frame") + ", "
                + Words.counted(result.turns().heard(), "turn") + " heard, "
                + result.turns().repaired() + " repaired, " + result.turns().lost() + " lost; "
                + Words.counted(result.attempts(), "attempt") + ", " + result.solves() + " solved.");
        lines.add("Look closer:  ./fermata solves --home " + result.home());
        return lines;
    }

    /** Says every tenth of the way. */
    private static final class Progress implements DemoListener {
        private static final int STEPS = 10;

        private final Terminal terminal;
        private long step = -1;

        Progress(Terminal terminal) {
            this.terminal = terminal;
        }

        @Override
        public void rehearsing() {
            terminal.err().println("rehearsing the evening ...");
        }

        @Override
        public void recording(long turnsMade, long turns, long framesKept) {
            long reached = STEPS * turnsMade / turns;
            if (reached > step) {
                step = reached;
                terminal.err()
                        .println(String.format(
                                Locale.ROOT,
                                "recording  %3d %%   %d of %d turns made, %d frames on the disk",
                                100 * turnsMade / turns,
                                turnsMade,
                                turns,
                                framesKept));
            }
        }
    }
}
