package fermata.daemon.cli;

import fermata.analysis.calibration.Calibration;
import fermata.analysis.calibration.CalibrationDrill;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.CalibrationText;
import fermata.daemon.json.CalibrationView;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Store;
import fermata.daemon.telling.CalibrationNotes;
import fermata.daemon.telling.Calibrations;
import fermata.daemon.turnfile.PracticeFile;
import fermata.daemon.turnfile.TurnStream;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Learns a solver's times for regrips, rotations and wide turns from a drill. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description = {
            "Learn your times for regrips, rotations and wide turns from a drill.",
            "Says how well an interval alone tells each from a turn that just follows. Print the drill with --drill, do"
                    + " it while listen records, then calibrate. What a capture teaches is kept and helps to read your"
                    + " solves; a FILE is only looked at."
        })
final class CalibrateCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..1",
            description =
                    "A turn stream, or - for what is piped in. Default: the newest capture with a note \"drill\".")
    private String file;

    @Option(names = "--capture", paramLabel = "N", description = "The capture in which the drill was done.")
    private Long capture;

    @Option(names = "--hand", paramLabel = "HAND", description = "left or right. Default: as the stream says, or left.")
    private String hand;

    @Option(names = "--drill", description = "Print the drill.")
    private boolean drillWanted;

    CalibrateCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** A stream in which a drill was done. */
    private record Source(String name, Hand hand, List<Event> events, Optional<CaptureRow> capture) {}

    @Override
    public Integer call() {
        if (hand != null && !List.of("left", "right").contains(hand)) {
            throw new CommandFailure("--hand " + hand + " is neither left nor right: a drill is for one hand");
        }
        if (file != null && capture != null) {
            throw new CommandFailure("give FILE or --capture, not both");
        }
        if (drillWanted) {
            CalibrationText.drill(drill(hand == null ? Hand.LEFT : Hand.of(hand)))
                    .forEach(line -> terminal.out().println(line));
            return 0;
        }
        Source source = file != null ? ofFile() : ofStore();
        Hand used = hand != null ? Hand.of(hand) : source.hand() == Hand.RIGHT ? Hand.RIGHT : Hand.LEFT;
        List<CalibrationDrill.Done> done = done(source, used);
        boolean isKept = source.capture().isPresent() && keep(source.capture().get(), used, done);
        CalibrationView view = view(source.name(), used, drill(used), done).kept(isKept);
        json.print(terminal, view, () -> CalibrationText.lines(view));
        return 0;
    }

    private static CalibrationDrill drill(Hand hand) {
        return hand == Hand.RIGHT ? CalibrationDrill.RIGHT : CalibrationDrill.LEFT;
    }

    private boolean keep(CaptureRow row, Hand used, List<CalibrationDrill.Done> done) {
        Optional<Store> writable = Store.tryOpenToAdd(home.home(terminal), () -> LocalDateTime.now(terminal.clock()));
        if (writable.isEmpty()) {
            terminal.err()
                    .println("warning: these times are not kept, since somebody else writes to "
                            + home.home(terminal).directory() + " or nobody can; calibrate again when nobody does");
            return false;
        }
        try (Store store = writable.get()) {
            new Calibrations(store.captures()).keep(row, used, Calibration.measured(done));
            return true;
        }
    }

    private static List<CalibrationDrill.Done> done(Source source, Hand used) {
        CalibrationDrill drill = drill(used);
        List<CalibrationDrill.Done> done = new ArrayList<>();
        for (List<Event.Turned> section : CalibrationNotes.sections(source.events())) {
            if (!section.get(0).isTimed()) {
                throw new CommandFailure(source.name() + " has no times, so there are none to learn");
            }
            done.addAll(drill.find(section));
        }
        if (done.isEmpty()) {
            throw new CommandFailure("no exercise of the " + used.written() + " hand's drill is in " + source.name()
                    + "; print it with: fermata calibrate --drill --hand " + used.written());
        }
        return done;
    }

    private static CalibrationView view(
            String name, Hand used, CalibrationDrill drill, List<CalibrationDrill.Done> done) {
        return new CalibrationView(
                name,
                used.written(),
                false,
                drill.exercises().stream()
                        .map(exercise -> new CalibrationView.Done(exercise.name(), exercise.words(), (int) done.stream()
                                .filter(one -> one.exercise() == exercise)
                                .count()))
                        .toList(),
                Calibration.learn(done).times().stream()
                        .map(times -> new CalibrationView.Times(
                                times.kind().name().toLowerCase(Locale.ROOT),
                                times.count(),
                                Math.round(times.medianMicros()),
                                List.of(
                                        Math.round(times.medianInterval().low()),
                                        Math.round(times.medianInterval().high())),
                                times.separation(),
                                List.of(
                                        times.separationInterval().low(),
                                        times.separationInterval().high())))
                        .toList());
    }

    private Source ofFile() {
        String name = WrittenFile.name(file);
        List<TurnStream> streams = PracticeFile.read(name, WrittenFile.bytes(terminal, file));
        TurnStream stream = streams.stream()
                .filter(one -> CalibrationNotes.isAnnounced(one.events()))
                .reduce((earlier, later) -> later)
                .orElse(streams.get(streams.size() - 1));
        return new Source(name, stream.header().origin().hand(), stream.events(), Optional.empty());
    }

    private Source ofStore() {
        try (Store store = Store.openForReading(home.home(terminal))) {
            Practice practice = new Practice(store);
            List<CaptureRow> captures = new ArrayList<>(store.captures().all());
            Collections.reverse(captures);
            for (CaptureRow row : captures) {
                if (capture == null || capture == row.id()) {
                    List<Event> events = practice.events(row);
                    if (capture != null || CalibrationNotes.isAnnounced(events)) {
                        return new Source(
                                "capture " + row.id(), row.start().origin().hand(), events, Optional.of(row));
                    }
                }
            }
        }
        throw new CommandFailure(
                capture != null
                        ? "there is no capture " + capture
                        : "no capture has a note that says \"drill\"; name the one with --capture, or print the drill"
                                + " with --drill");
    }
}
