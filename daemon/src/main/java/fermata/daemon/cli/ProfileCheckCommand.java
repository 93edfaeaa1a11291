package fermata.daemon.cli;

import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.ProfileFile;
import fermata.daemon.cli.asked.RecordingFile;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.ReplayText;
import fermata.daemon.json.ReplayView;
import fermata.decoder.stream.profile.ProfileProblem;
import fermata.decoder.stream.profile.ProfileTrait;
import fermata.decoder.stream.profile.StreamProfile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a profile and says what it means, or all that is wrong with it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Check a stream profile (docs/stream-profile.md) and say what it means,",
            "or what each frame of a recording becomes by it."
        })
final class ProfileCheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", description = "The profile.")
    private Path file;

    @Option(
            names = "--recording",
            paramLabel = "R",
            description = {
                "Read this recording of prompted turns by the profile and say what each frame",
                "became. Ends with 2 if a frame is not understood, or if none tells a turn."
            })
    private String recording;

    ProfileCheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** What {@code --json} prints. */
    private record Verdict(String file, boolean usable, List<ProfileTrait> traits, List<ProfileProblem> problems) {}

    @Override
    public Integer call() {
        return StreamProfile.parse(ProfileFile.text(file)).fold(this::usable, this::unusable);
    }

    private int usable(StreamProfile profile) {
        if (recording != null) {
            return replay(profile);
        }
        List<ProfileTrait> traits = profile.describe();
        json.print(terminal, new Verdict(file.toString(), true, traits, List.of()), () -> text(traits));
        return ExitCode.OK;
    }

    private int unusable(List<ProfileProblem> problems) {
        json.print(terminal, new Verdict(file.toString(), false, List.of(), problems), List::of);
        problems.forEach(problem -> terminal.err().println(file + ": " + problem.message()));
        return ExitCode.USAGE;
    }

    private int replay(StreamProfile profile) {
        ReplayView view =
                ReplayedFrames.of(WrittenFile.name(recording), profile, RecordingFile.read(terminal, recording));
        json.print(terminal, view, () -> ReplayText.lines(view));
        if (view.understood()) {
            return ExitCode.OK;
        }
        terminal.err()
                .println(file + " does not read " + view.recording() + ": "
                        + (view.counts().rejected() > 0
                                ? view.counts().rejected() + " of "
                                        + view.counts().frames() + " frames were rejected"
                                : "no frame tells a turn"));
        return ExitCode.USAGE;
    }

    private List<String> text(List<ProfileTrait> traits) {
        List<String> lines = new ArrayList<>();
        lines.add(file + " is usable:");
        lines.add("");
        traits.forEach(trait -> lines.add(String.format(Locale.ROOT, "  %-18s %s", trait.label(), trait.text())));
        return lines;
    }
}
