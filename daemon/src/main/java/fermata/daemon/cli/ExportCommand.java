package fermata.daemon.cli;

import fermata.analysis.event.Event;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.Words;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Exporter;
import fermata.daemon.turnfile.TurnStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes turn streams out. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {
            "Write captures as turn streams, one JSON object a line; import reads them back.",
            "What leaves: hand, times, turns, marks and what is known as truth. No device address is in it."
        })
final class ExportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Parameters(
            paramLabel = "CAPTURE",
            arity = "0..*",
            description = "Captures by number: 3 for solve 3-412. Default: all.")
    private List<String> wanted = List.of();

    @Option(names = "--out", paramLabel = "FILE", description = "Write to a new file instead of standard output.")
    private Path out;

    @Option(names = "--with-names", description = "Let the names of cube and solver go along.")
    private boolean withNames;

    ExportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        try (Store store = Store.openForReading(home.home(terminal))) {
            List<CaptureRow> captures = captures(store);
            Exporter exporter = new Exporter(store);
            long turns = out == null ? print(exporter, captures) : keep(store, exporter, captures);
            terminal.err()
                    .println(Words.counted(captures.size(), "capture") + " with "
                            + Words.counted(turns, "turn") + " exported"
                            + (withNames
                                    ? ", with the names of cube and solver"
                                    : ", without the names of cube and solver"));
            requireWhole(store);
        }
        return 0;
    }

    /**
     * All that was asked for, or a complaint: what cannot be read is noticed by reading it, so this comes afterwards.
     */
    private void requireWhole(Store store) {
        List<String> losses = store.losses();
        if (wanted.isEmpty() && !losses.isEmpty()) {
            throw new CommandFailure("this is not all that was practised: " + String.join("; ", losses)
                    + "; the captures that are whole can be exported by their numbers");
        }
    }

    private long print(Exporter exporter, List<CaptureRow> captures) {
        long turns = 0;
        for (CaptureRow capture : captures) {
            TurnStream stream = exporter.stream(capture, withNames);
            stream.lines().forEach(line -> terminal.out().print(line + "\n"));
            turns += turns(stream);
        }
        if (terminal.out().checkError()) {
            throw new CommandFailure("cannot write the streams: the output is closed or its disk is full");
        }
        return turns;
    }

    /** The file has its name only once it is whole: half of it would be taken for all that was practised. */
    private long keep(Store store, Exporter exporter, List<CaptureRow> captures) {
        Path unfinished = Path.of(out + ".unfinished");
        try {
            if (Files.exists(out)) {
                throw new FileAlreadyExistsException(out.toString());
            }
            try {
                long turns = write(exporter, captures, unfinished);
                requireWhole(store);
                Files.move(unfinished, out);
                return turns;
            } finally {
                Files.deleteIfExists(unfinished);
            }
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + out + ": " + FileFaults.reason(e), e);
        }
    }

    private long write(Exporter exporter, List<CaptureRow> captures, Path file) throws IOException {
        long turns = 0;
        try (BufferedWriter writer = Files.newBufferedWriter(file)) {
            for (CaptureRow capture : captures) {
                TurnStream stream = exporter.stream(capture, withNames);
                for (String line : stream.lines()) {
                    writer.write(line + "\n");
                }
                turns += turns(stream);
            }
        }
        return turns;
    }

    private static long turns(TurnStream stream) {
        return stream.events().stream().filter(Event.Turned.class::isInstance).count();
    }

    private List<CaptureRow> captures(Store store) {
        if (wanted.isEmpty()) {
            return store.captures().all();
        }
        List<CaptureRow> captures = new ArrayList<>();
        for (String word : wanted) {
            long id = number(word);
            captures.add(store.captures()
                    .find(id)
                    .orElseThrow(() -> new CommandFailure("there is no capture " + id + " among "
                            + Words.counted(store.captures().all().size(), "capture"))));
        }
        return captures;
    }

    private static long number(String word) {
        try {
            return Long.parseLong(word);
        } catch (NumberFormatException e) {
            throw new CommandFailure("CAPTURE is " + word + ", expected the number of one: 3 for solve 3-412", e);
        }
    }
}
