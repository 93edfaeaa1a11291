package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.RecordingFile;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.FindingText;
import fermata.daemon.cli.text.Words;
import fermata.daemon.json.FindingView;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.WholeFile;
import fermata.decoder.finding.Finding;
import fermata.decoder.finding.ProfileFinder;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.ProfileWriter;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds a profile from what a cube sent while turns were asked for. */
@Command(
        name = "find",
        mixinStandardHelpOptions = true,
        description = {
            "Find a cube's stream profile from a recording of prompted turns",
            "(docs/finding.md). Only a profile that was proved is written."
        })
final class ProfileFindCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "RECORDING", description = "The recording (docs/formats.md); - for what is piped in.")
    private String recording;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Write the profile to this new file. Default: print it.")
    private Path out;

    ProfileFindCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        refuseUnusableOut();
        PromptedRecording drill = RecordingFile.read(terminal, recording);
        terminal.err()
                .println("reading " + Words.counted(drill.values().size(), "value") + " beside "
                        + Words.counted(drill.prompts().size(), "prompt")
                        + "; this takes some seconds, on a small board up to a minute");
        terminal.err().flush();
        Finding finding = ProfileFinder.find(drill);
        boolean isSound = finding instanceof Finding.Sound;
        if (finding instanceof Finding.Sound sound && out != null) {
            write(ProfileWriter.write(sound.profile()));
        }
        String written = isSound && out != null ? out.toString() : null;
        FindingView view = FindingView.of(WrittenFile.name(recording), written, finding);
        json.print(terminal, view, () -> answer(finding));
        // A profile that is printed stands alone, so that it can be piped on; what is said of it goes beside it.
        FindingText.lines(finding).forEach(terminal.err()::println);
        return isSound ? ExitCode.OK : ExitCode.USAGE;
    }

    private List<String> answer(Finding finding) {
        if (!(finding instanceof Finding.Sound sound)) {
            return List.of();
        }
        return out == null ? ProfileWriter.write(sound.profile()).lines().toList() : List.of(out.toString());
    }

    /** Before the long work: somebody's profile, perhaps written by hand, is never written over. */
    private void refuseUnusableOut() {
        if (out == null) {
            return;
        }
        if (Files.exists(out, LinkOption.NOFOLLOW_LINKS)) {
            throw unwritable(new FileAlreadyExistsException(out.toString()));
        }
        if (!Files.isDirectory(out.toAbsolutePath().getParent())) {
            throw unwritable(new NoSuchFileException(out.toString()));
        }
    }

    private void write(String profile) {
        try {
            WholeFile.write(out, profile, "rw-r--r--");
        } catch (IOException e) {
            throw unwritable(e);
        }
    }

    private CommandFailure unwritable(IOException because) {
        return new CommandFailure("cannot write " + out + ": " + FileFaults.reason(because), because);
    }
}
