package fermata.daemon.cli.asked;

import fermata.daemon.store.FileFaults;
import fermata.decoder.prompt.PromptedParser;
import fermata.decoder.prompt.PromptedReading;
import fermata.decoder.prompt.PromptedRecording;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Reads recordings of prompted turns that are named on the command line. Stateless. */
public final class RecordingFile {
    private RecordingFile() {}

    /**
     * The recording in a file, {@code -} for what is piped in.
     *
     * @throws CommandFailure if it cannot be read, or its first wrong line, with the member and the value there
     */
    public static PromptedRecording read(Terminal terminal, String file) {
        PromptedReading reading = parse(terminal, file);
        if (reading instanceof PromptedReading.Unusable unusable) {
            throw new CommandFailure(
                    WrittenFile.name(file) + ", " + unusable.problem().message());
        }
        return ((PromptedReading.Usable) reading).recording();
    }

    private static PromptedReading parse(Terminal terminal, String file) {
        // A decoder of its own reports bytes that are no UTF-8, where a reader would put question marks.
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(WrittenFile.open(terminal, file), StandardCharsets.UTF_8.newDecoder()))) {
            return PromptedParser.parse(lines.lines());
        } catch (UncheckedIOException e) {
            throw unreadable(file, e.getCause());
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private static CommandFailure unreadable(String file, IOException because) {
        return new CommandFailure("cannot read " + file + ": " + FileFaults.reason(because), because);
    }
}
