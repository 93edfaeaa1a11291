package fermata.daemon.cli;

import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.json.Json;
import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/** Runs commands in this process against one home. */
public final class CommandRig {
    private final Path home;

    public CommandRig(Path home) {
        this.home = home;
    }

    /** What a command gave. */
    public record Outcome(int code, String out, String err) {
        public List<String> lines() {
            return out.lines().toList();
        }

        public JsonNode json() {
            return Json.read(out);
        }
    }

    /** Runs a command with {@code --home} added. */
    public Outcome run(String... arguments) {
        return runPiped("", arguments);
    }

    public Outcome runPiped(String in, String... arguments) {
        return runPlain(
                in,
                Stream.concat(Stream.of(arguments), Stream.of("--home", home.toString()))
                        .toArray(String[]::new));
    }

    /** Runs a command as it is. */
    public static Outcome runPlain(String in, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)),
                new PrintWriter(out),
                new PrintWriter(err),
                Map.of(),
                Path.of("/nowhere"),
                Clock.fixed(Instant.parse("2026-11-24T22:00:00Z"), ZoneId.of("Europe/Oslo")));
        int code = Main.run(terminal, arguments);
        return new Outcome(code, out.toString(), err.toString());
    }
}
