package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.json.Json;
import fermata.daemon.json.SolveView;
import fermata.daemon.store.FileFaults;
import fermata.daemon.web.InstalledBrowser;
import fermata.daemon.web.OneFile;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes a solve's score into a new file: a page that needs no board, or a plain picture. Stateless. */
final class KeptScore {
    private KeptScore() {}

    /** Writes it, as the file's name asks: {@code .html} or {@code .svg}. */
    static void write(Terminal terminal, SolveView solve, Path file) {
        String name = file.toString();
        String text;
        if (name.endsWith(".html")) {
            text = OneFile.score(solve.id(), Json.write(solve));
        } else if (name.endsWith(".svg")) {
            text = picture(terminal, solve);
        } else {
            throw new CommandFailure("--out " + file + ": the name must end in .html (a page) or .svg (a picture)");
        }
        try {
            Files.writeString(file, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            throw new CommandFailure("--out " + file + " exists already; choose another name", e);
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + file + ": " + FileFaults.reason(e), e);
        }
        terminal.err()
                .println("Solve " + solve.id() + " is in " + file
                        + ": its turns and times, date, hand and scramble; no device's address, no notes.");
    }

    private static String picture(Terminal terminal, SolveView solve) {
        String path = terminal.environment().getOrDefault("PATH", "");
        try {
            return InstalledBrowser.score(path, solve.id(), Json.write(solve))
                    .orElseThrow(() -> new CommandFailure("a picture is drawn by a browser, and chromium is not"
                            + " installed here; write --out FILE.html, and keep the picture from that page"));
        } catch (IllegalStateException e) {
            throw new CommandFailure(e.getMessage(), e);
        }
    }
}
