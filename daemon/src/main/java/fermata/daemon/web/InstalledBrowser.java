package fermata.daemon.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Draws scores with a browser of this machine, without a window. A score is engraved by the page's own script, and a
 * second engraver in another language would come to draw another score; so a plain picture needs a browser, and a page
 * in one file does not. Stateless; about two seconds.
 */
public final class InstalledBrowser {
    private static final List<String> NAMES =
            List.of("chromium", "chromium-browser", "google-chrome-stable", "google-chrome");
    private static final int SECONDS = 30;
    private static final String BEGIN = "<pre id=\"picture\">";

    private InstalledBrowser() {}

    /**
     * The score of a solve as SVG.
     *
     * @param path the directories in which programs are looked for, as in the variable PATH
     * @param id the solve's id
     * @param solveJson as {@code show ID --json} prints it
     * @return nothing if no browser is installed that can do it
     * @throws IllegalStateException if the browser did not draw it
     */
    public static Optional<String> score(String path, String id, String solveJson) {
        return find(path).map(program -> draw(program, OneFile.picture(id, solveJson)));
    }

    private static Optional<Path> find(String path) {
        return NAMES.stream()
                .flatMap(name -> Stream.of(path.split(":")).map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static String draw(Path program, String page) {
        Path folder = null;
        try {
            folder = Files.createTempDirectory("fermata-picture");
            Path file = Files.writeString(folder.resolve("score.html"), page);
            String drawn = run(List.of(
                    program.toString(),
                    "--headless",
                    "--disable-gpu",
                    "--no-first-run",
                    // Without it the browser refuses to run for root; the page is ours and may fetch nothing.
                    "--no-sandbox",
                    "--user-data-dir=" + folder.resolve("profile"),
                    "--dump-dom",
                    file.toUri().toString()));
            int from = drawn.indexOf(BEGIN);
            int to = drawn.indexOf("</pre>", from);
            if (from < 0 || to < 0) {
                throw new IllegalStateException(program + " opened the score and did not draw it");
            }
            return unescaped(drawn.substring(from + BEGIN.length(), to));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot have " + program + " draw the score: " + e.getMessage(), e);
        } finally {
            delete(folder);
        }
    }

    private static String run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            CompletableFuture<byte[]> said = CompletableFuture.supplyAsync(() -> read(process.getInputStream()));
            if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
                throw new IllegalStateException(command.get(0) + " did not draw the score within " + SECONDS + " s");
            }
            return new String(said.join(), StandardCharsets.UTF_8);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the score was drawn", e);
        } finally {
            process.descendants().forEach(ProcessHandle::destroyForcibly);
            process.destroyForcibly();
        }
    }

    private static byte[] read(InputStream stream) {
        try (stream) {
            return stream.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String unescaped(String html) {
        return html.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&nbsp;", "\u00a0")
                .replace("&amp;", "&");
    }

    private static void delete(Path folder) {
        if (folder == null) {
            return;
        }
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
        } catch (IOException left) {
            // It is in the folder for temporary files, which the system empties.
            return;
        }
    }
}
