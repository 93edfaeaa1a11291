package fermata.daemon.cli;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.json.SequencesView;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.telling.OwnSequences;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Keeps and lists the sequences that a solver turns in last layers. */
@Command(
        name = "sequences",
        mixinStandardHelpOptions = true,
        description = {
            "Keep or list the last-layer sequences that are your own, to read your solves by.",
            "Listed are those that you typed, and last layers of solves that you set right with show ID --hand; those"
                    + " that many know are known besides. After # stands what your other solves repeat, as it was read:"
                    + " how often, and how likely it is so. Where it is 0.9 or more, other solves are read by it; where"
                    + " it is less, type it as you turn it.",
            "With FILE, keep what is in it instead of what was typed before: one sequence a line, as the hand turns"
                    + " it, with its wide turns and rotations; # begins a comment. An empty FILE takes all back."
        })
final class SequencesCommand implements Callable<Integer> {
    private static final String UNKNOWN = "unknown";

    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Option(names = "--solver", paramLabel = "NAME", description = "Whose they are. Default: who gave no name.")
    private String solver = UNKNOWN;

    @Parameters(arity = "0..1", paramLabel = "FILE", description = "A text file, or - for what is piped in.")
    private String file;

    SequencesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        SequencesView view;
        if (file == null) {
            view = home.read(terminal, practice -> {
                practice.refresh();
                return practice.sequences(solver);
            });
        } else {
            keep(typed());
            try (Store store = Store.openForReading(home.home(terminal))) {
                view = new Practice(store).sequences(solver);
            }
        }
        json.print(terminal, view, () -> lines(view));
        return 0;
    }

    private void keep(List<String> sequences) {
        Home where = home.home(terminal);
        // A home is not begun for this: there must be somebody's practice in it.
        Store.openForReading(where).close();
        try (Store store = HomeOption.write(where, terminal)) {
            if (!new OwnSequences(store.captures()).keep(solver, sequences)) {
                throw new CommandFailure("nothing was recorded of the solver \"" + solver
                        + "\" yet, so nothing can be read by these sequences; give the name that listen was given");
            }
        }
    }

    private List<String> typed() {
        String name = WrittenFile.name(file);
        List<String> lines = new String(WrittenFile.bytes(terminal, file), StandardCharsets.UTF_8)
                .lines()
                .toList();
        List<String> sequences = new ArrayList<>();
        for (int line = 0; line < lines.size(); line++) {
            String words = lines.get(line).replaceFirst("#.*", "").strip();
            if (!words.isEmpty()) {
                sequences.add(sequence(name + ", line " + (line + 1), words));
            }
        }
        return sequences;
    }

    private static String sequence(String where, String words) {
        try {
            Sequence sequence = Sequence.parse(words);
            int turns = HoldTrack.of(sequence, Orientation.IDENTITY).size();
            if (turns < SequenceBook.SHORTEST) {
                throw new CommandFailure(where + ": \"" + words + "\" has " + turns + " turns; fewer than "
                        + SequenceBook.SHORTEST + " are met by chance too often to say how the cube was held");
            }
            return sequence.toString();
        } catch (IllegalArgumentException e) {
            throw new CommandFailure(where + ": " + e.getMessage(), e);
        }
    }

    private static List<String> lines(SequencesView view) {
        List<String> lines = new ArrayList<>();
        view.typed().forEach(lines::add);
        view.learned().forEach(learned -> lines.add(learned.words() + "   # from " + learned.solve()));
        view.repeated().forEach(repeated -> lines.add(line(repeated)));
        if (lines.isEmpty()) {
            lines.add("# none typed, and no solve was set right; only what many know is used");
        }
        return lines;
    }

    /** As a comment, so that a list that is typed back does not take for said what was only read. */
    private static String line(SequencesView.Repeated repeated) {
        String often = repeated.alike() == repeated.seen()
                ? repeated.seen() + " times"
                : repeated.alike() + " of " + repeated.seen() + " times";
        return "# " + repeated.words() + "   " + often + ", " + String.format(Locale.ROOT, "%.2f", repeated.p())
                + (repeated.sure() ? "" : " ?");
    }
}
