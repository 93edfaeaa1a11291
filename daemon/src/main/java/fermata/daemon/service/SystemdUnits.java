package fermata.daemon.service;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;

/** systemd units, written for one program. Stateless; safe to use from any thread. */
public final class SystemdUnits {
    private SystemdUnits() {}

    /**
     * Writes a unit, and the directory if there is none.
     *
     * @param unit its file's name, one of those that come along
     * @param program the full path of what it runs
     * @param arguments what the program is told
     */
    public static void write(Path directory, String unit, Path program, List<String> arguments) throws IOException {
        String command = quoted(program.toString())
                + arguments.stream().map(word -> " " + quoted(word)).collect(Collectors.joining());
        Files.createDirectories(directory);
        Files.writeString(directory.resolve(unit), template(unit).replace("@COMMAND@", command));
    }

    /** As systemd.service(5) wants it: per cent begins a specifier, a dollar sign a variable. */
    private static String quoted(String word) {
        String escaped = word.replace("\\", "\\\\")
                .replace("\"", "\\\"")
                .replace("%", "%%")
                .replace("$", "$$");
        return escaped.matches("[A-Za-z0-9:=/._%$-]+") ? escaped : '"' + escaped + '"';
    }

    private static String template(String unit) throws IOException {
        try (InputStream stream = SystemdUnits.class.getResourceAsStream(unit)) {
            if (stream == null) {
                throw new IllegalStateException("the program lacks its own file " + unit);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
