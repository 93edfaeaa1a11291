package fermata.daemon.cli.asked;

import fermata.daemon.store.FileFaults;
import fermata.decoder.stream.profile.ProfileProblem;
import fermata.decoder.stream.profile.StreamProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/**
 * A stream profile that can be used.
 *
 * @param text the file, as it is kept with a capture
 * @param profile what it says
 */
public record ProfileFile(String text, StreamProfile profile) {
    static ProfileFile read(Path file) {
        String text = text(file);
        return StreamProfile.parse(text).fold(profile -> new ProfileFile(text, profile), problems -> {
            throw new CommandFailure(file + " cannot be used: "
                    + problems.stream().map(ProfileProblem::message).collect(Collectors.joining("; ")));
        });
    }

    public static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new CommandFailure("cannot read " + file + ": " + FileFaults.reason(e), e);
        }
    }
}
