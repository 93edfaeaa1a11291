package fermata.daemon.cli;

import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.CaptureCounts;
import fermata.daemon.capture.CaptureListener;
import fermata.daemon.civil.MachineCivilClock;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.ListenOptions;
import fermata.daemon.cli.asked.ProfileFile;
import fermata.daemon.cli.asked.RenewalProgress;
import fermata.daemon.cli.asked.SolverOptions;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.Words;
import fermata.daemon.listening.BackgroundRenewal;
import fermata.daemon.listening.CaptureEnd;
import fermata.daemon.listening.FrameFaults;
import fermata.daemon.live.LiveBoard;
import fermata.daemon.live.LiveCapture;
import fermata.daemon.live.ScrambleProcess;
import fermata.daemon.live.ScrambleStock;
import fermata.daemon.live.TellingJournal;
import fermata.daemon.pairing.PairingDesk;
import fermata.daemon.practice.Practice;
import fermata.daemon.recording.CaptureDate;
import fermata.daemon.recording.Recording;
import fermata.daemon.recording.RecordingPlan;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.time.CivilClock;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.web.Audience;
import fermata.daemon.web.PageServer;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Listens to a cube until it is told to stop. */
@Command(
        name = "listen",
        mixinStandardHelpOptions = true,
        description = "Record practice from a cube over Bluetooth and serve the pages, until Ctrl-C.")
final class ListenCommand implements Callable<Integer> {
    private static final Duration LOOK_EVERY = Duration.ofMillis(500);

    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private SolverOptions solver;

    @Mixin
    private ListenOptions options;

    private LinkStatus told;
    private boolean saysUnknown;
    private final Outages outages;

    ListenCommand(Terminal terminal) {
        this.terminal = terminal;
        this.outages = new Outages(terminal.err());
    }

    @Override
    public Integer call() {
        ProfileFile file = options.profileFile();
        RecordingPlan plan = new RecordingPlan(
                options.bus(),
                file.profile(),
                file.text(),
                solver.origin(),
                terminal.clock().instant(),
                terminal.clock().getZone(),
                options.capture());
        Home where = home.home(terminal);
        Logs.tellOfDeriving();
        try (StopSignal stop = StopSignal.install();
                Store store = HomeOption.listen(where, terminal)) {
            BackgroundRenewal renewal = new BackgroundRenewal(new RenewalProgress(terminal.err()), terminal.err());
            Practice practice = new Practice(store, renewal);
            PracticeWarnings warnings = new PracticeWarnings(store, terminal.err());
            try (renewal) {
                renewal.start(practice::refresh, () -> warnings.check(practice, renewal));
                listen(store, plan, stop, practice, warnings);
            }
            if (renewal.isComplete()) {
                practice.refresh();
            }
        }
        return 0;
    }

    private void listen(
            Store store, RecordingPlan plan, StopSignal stop, Practice practice, PracticeWarnings warnings) {
        MonotonicClock clock = MonotonicClock.system();
        if (!options.hasPages()) {
            listen(store, plan, clock, stop, Optional.empty());
            return;
        }
        try (ScrambleStock scrambles = ScrambleStock.start(ScrambleProcess::make);
                LiveBoard board = LiveBoard.start(scrambles, clock);
                PageServer pages = Pages.start(practice, board, reach(store, board, clock), options.port())) {
            board.warn(() -> Stream.concat(warnings.now().stream(), outages.now().stream())
                    .toList());
            terminal.err().println("pages at " + pages.url());
            listen(store, plan, clock, stop, Optional.of(board));
        }
    }

    private Audience reach(Store store, LiveBoard board, MonotonicClock clock) {
        if (!options.lan().orElse(false)) {
            return Audience.thisMachine();
        }
        PairingDesk desk = new PairingDesk(store.home().directory(), clock, terminal.clock());
        board.hearTurns(desk);
        terminal.err()
                .println("other machines on this network reach the pages at port " + options.port()
                        + " once they are paired: by the cube, or with fermata pair CODE");
        return Audience.network(desk);
    }

    /** Records night after night: each practice day gets captures of its own. */
    private void listen(
            Store store, RecordingPlan plan, MonotonicClock clock, StopSignal stop, Optional<LiveBoard> board) {
        boolean goOn = true;
        CivilClock civil = MachineCivilClock.of(terminal.clock(), clock, options.trustsClock());
        while (goOn) {
            RecordingPlan night = plan.begunAt(terminal.clock().instant());
            FrameFaults faults = new FrameFaults(plan.profile(), terminal.err());
            Optional<LiveCapture> live = board.map(each -> each.begin(night.profile(), night.origin()));
            TurnsHeard turns = new TurnsHeard(plan.profile());
            List<CaptureListener> listeners = live.<List<CaptureListener>>map(each -> List.of(faults, turns, each))
                    .orElse(List.of(faults, turns));
            try (Recording recording = Recording.start(store, night, clock, "", listeners)) {
                live.ifPresent(each ->
                        each.attach(recording::status, TellingJournal.of(store.captures(), recording.captureId())));
                CaptureDate date = new CaptureDate(store.civilTimes(), recording.captureId(), civil);
                goOn = watch(recording, turns, date, new CaptureEnd(clock.nanos(), night.zone()), clock, stop);
                CaptureCounts counts = recording.finish();
                terminal.err().println(summary(counts, faults.summary()));
            } finally {
                live.ifPresent(LiveCapture::end);
            }
        }
    }

    /** Until told to stop (false), or the next capture should begin and the cube is at rest (true). */
    private boolean watch(
            Recording recording,
            TurnsHeard turns,
            CaptureDate date,
            CaptureEnd end,
            MonotonicClock clock,
            StopSignal stop) {
        do {
            recording.check();
            report(recording.status());
            outages.look(recording.outage(), recording.lastOutage());
            date.look();
            tell(date);
            if (end.isDue(turns.count(), date.started(), date.slept(), clock.nanos())) {
                return true;
            }
        } while (!stop.await(LOOK_EVERY));
        return false;
    }

    private void tell(CaptureDate date) {
        if (date.started().isEmpty() && !saysUnknown) {
            terminal.err()
                    .println(
                            "the date is not known to be right yet; what is practised is filed under its day once it is"
                                    + " (--trust-clock says that it is)");
        } else if (date.started().isPresent() && saysUnknown) {
            terminal.err().println("the date is known now; the practice is filed under its day");
        }
        saysUnknown = date.started().isEmpty();
    }

    private static String summary(CaptureCounts counts, String faults) {
        return Words.counted(counts.committed(), "frame") + " kept"
                + (counts.dropped() > 0 ? ", " + counts.dropped() + " dropped for want of room" : "")
                + (faults.isEmpty() ? "" : ", of which cannot be read: " + faults);
    }

    private void report(LinkStatus status) {
        if (!status.equals(told)) {
            told = status;
            String word = status.state().name().toLowerCase(Locale.ROOT).replace('_', ' ');
            terminal.err().println(word + (status.detail().isEmpty() ? "" : ": " + status.detail()));
        }
    }
}
