package fermata.daemon.cli.asked;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.Main;
import java.io.FileWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a process takes from its surroundings. */
class TerminalTest {
    @TempDir
    Path directory;

    @Test
    void shouldKeepEveryLetterOfANameInTheCLocale() throws Exception {
        Map<String, String> asAService = Map.of("LC_ALL", "C");
        String home = directory.resolve("home").toString();
        assertThat(fermata(asAService, "import", evening().toString(), "--home", home))
                .contains("1 turn imported");

        assertThat(fermata(asAService, "export", "--with-names", "--home", home))
                .contains("\"Ørjan Æ\"");
    }

    /** XDG Base Directory Specification 0.8: $HOME, which need not be what the system's list of users says. */
    @Test
    void shouldPractiseInTheHomeOfTheEnvironment() throws Exception {
        Path home = Files.createDirectory(directory.resolve("some body"));

        fermata(
                Map.of("HOME", home.toString(), "XDG_DATA_HOME", ""),
                "import",
                evening().toString());

        assertThat(home.resolve(".local/share/fermata/practice.db")).isNotEmptyFile();
    }

    @ParameterizedTest
    @ValueSource(strings = {"help", "help backup", "--version", "calibrate --drill", "scramble --help"})
    void shouldNotEndWellWhenTheDiskTookNothingOfTheAnswer(String command) throws IOException {
        StringWriter err = new StringWriter();
        try (PrintWriter full = new PrintWriter(new FileWriter("/dev/full", StandardCharsets.UTF_8))) {
            Terminal terminal = new Terminal(
                    InputStream.nullInputStream(), full, new PrintWriter(err), Map.of(), directory, Clock.systemUTC());

            assertThat(Main.run(terminal, command.split(" "))).isEqualTo(2);
        }
        assertThat(err.toString().lines())
                .containsExactly("fermata: cannot print the answer: the output is closed or its disk is full");
    }

    private Path evening() throws IOException {
        return Files.writeString(directory.resolve("evening.jsonl"), """
                {"format":"turn-stream","version":1,"clock":"device","hand":"left","solver":"Ørjan Æ"}
                {"turn":"R","at":0}
                """);
    }

    private static String fermata(Map<String, String> environment, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().putAll(environment);
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }
}
