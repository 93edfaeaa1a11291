package fermata.daemon.cli;

import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.ProfileFile;
import fermata.daemon.cli.asked.Terminal;
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
import picocli.CommandLine.Parameters;

/** Reads a profile and says what it means, or all that is wrong with it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Check a stream profile (docs/stream-profile.md) and say what it means.")
final class ProfileCheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", description = "The profile.")
    private Path file;

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
        List<ProfileTrait> traits = profile.describe();
        json.print(terminal, new Verdict(file.toString(), true, traits, List.of()), () -> text(traits));
        return ExitCode.OK;
    }

    private int unusable(List<ProfileProblem> problems) {
        json.print(terminal, new Verdict(file.toString(), false, List.of(), problems), List::of);
        problems.forEach(problem -> terminal.err().println(file + ": " + problem.message()));
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
