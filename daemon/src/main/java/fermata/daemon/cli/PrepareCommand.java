package fermata.daemon.cli;

import fermata.daemon.cli.asked.Terminal;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import picocli.CommandLine.Command;

/**
 * Goes once through what a short command does, so that the virtual machine can keep the classes that this takes. It
 * practises a made-up evening in a directory that is gone afterwards.
 */
@Command(name = "prepare", hidden = true, description = "Go through the usual commands once, on a made-up evening.")
final class PrepareCommand implements Callable<Integer> {
    private static final Pattern FIRST_SOLVE = Pattern.compile("\"id\":\"([^\"]+)\"");

    private final Terminal terminal;

    PrepareCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Path directory = Files.createTempDirectory("fermata");
        try {
            run(directory);
        } finally {
            try (Stream<Path> files = Files.walk(directory)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
        return 0;
    }

    private void run(Path directory) {
        String evening = directory.resolve("evening.jsonl").toString();
        String home = directory.resolve("home").toString();
        quietly(directory, "rehearse", "--solves", "3", "--seed", "1", evening);
        quietly(directory, "import", evening, "--home", home);
        quietly(directory, "night", "--home", home);
        quietly(
                directory,
                "night",
                "--home",
                home,
                "--out",
                directory.resolve("night.html").toString());
        quietly(directory, "cases", "--home", home);
        quietly(directory, "solves", "--home", home);
        Matcher solve = FIRST_SOLVE.matcher(quietly(directory, "solves", "--home", home, "--json"));
        if (!solve.find()) {
            throw new IllegalStateException("nothing was found in a made-up evening");
        }
        quietly(directory, "show", solve.group(1), "--home", home);
    }

    private String quietly(Path directory, String... words) {
        StringWriter said = new StringWriter();
        Terminal quiet = new Terminal(
                InputStream.nullInputStream(),
                new PrintWriter(said),
                new PrintWriter(Writer.nullWriter()),
                terminal.environment(),
                directory,
                terminal.clock());
        int code = Main.run(quiet, words);
        if (code != 0) {
            throw new IllegalStateException("fermata " + String.join(" ", words) + " ended with " + code);
        }
        return said.toString();
    }
}
