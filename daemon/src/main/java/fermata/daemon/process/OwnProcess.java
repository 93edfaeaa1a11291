package fermata.daemon.process;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Runs this program again, for one command. Stateless. */
public final class OwnProcess {
    private OwnProcess() {}

    /**
     * Runs a command to its end, as long as that takes.
     *
     * @param heapMegabytes the most memory that its objects may take
     * @param arguments the command and its arguments
     * @return what it printed, errors included
     * @throws IllegalStateException if it ended with another code than 0; the message has what it printed
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
            process = new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException("fermata " + arguments.get(0)
                        + ", run as a process of its own, ended with code " + code + ": " + said.strip());
            }
            return said;
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
}
