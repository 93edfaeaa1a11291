package fermata.daemon.cli.asked;

import fermata.daemon.json.Json;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** {@code --json}, and how an answer is printed. */
public final class JsonOption {
    @Option(names = "--json", description = "Print one JSON document instead of text (docs/formats.md).")
    private boolean wanted;

    /** Prints the document, or the lines of text. */
    public void print(Terminal terminal, Object document, Supplier<List<String>> text) {
        if (wanted) {
            terminal.out().println(Json.write(document));
        } else {
            text.get().forEach(line -> terminal.out().println(line));
        }
        if (terminal.out().checkError()) {
            throw new CommandFailure("cannot print the answer: the output is closed or its disk is full");
        }
    }
}
