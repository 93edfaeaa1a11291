package fermata.daemon.process;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/** Runs this program again, for one command. Stateless. */
public final class OwnProcess {
    private OwnProcess() {}

    /**
     * Runs a command to its end, as long as that takes.
     *
     * @param heapMegabytes the most memory that its objects may take
     * @param arguments the command and its arguments
     * @return what it printed, without what it said on the side: a virtual machine may warn there of itself
     * @throws IllegalStateException if it ended with another code than 0; the message has what it said on the side
     */
    public static String run(int heapMegabytes, List<String> arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heapMegabytes + "m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "fermata.daemon.cli.Main"));
        command.addAll(arguments);
        Process process = null;
        try {
            process = new ProcessBuilder(command).start();
            process.getOutputStream().close();
            InputStream aside = process.getErrorStream();
            // Both at once: whichever is left for later may be full, and the process then waits for ever.
            CompletableFuture<String> saidAside = CompletableFuture.supplyAsync(() -> all(aside));
            String printed = all(process.getInputStream());
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException(
                        "fermata " + arguments.get(0) + ", run as a process of its own, ended with code " + code + ": "
                                + saidAside.join().strip());
            }
            return printed;
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "fermata " + arguments.get(0) + " cannot be run as a process of its own: " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while fermata " + arguments.get(0) + " ran", e);
        } finally {
            if (process != null) {
                process.destroy();
            }
        }
    }

    private static String all(InputStream stream) {
        try {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
