package fermata.daemon.reading;

import fermata.daemon.store.CaptureKind;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.decoder.stream.profile.ProfileProblem;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.stream.Collectors;

/** Reads captures into events. The same capture gives the same events. Stateless but for the store it asks. */
public final class CaptureReader {
    private final Captures captures;

    public CaptureReader(Captures captures) {
        this.captures = captures;
    }

    /** All events of a capture; linear in its frames or lines. */
    public CaptureReading read(CaptureRow capture) {
        if (capture.kind() == CaptureKind.STREAM) {
            return ToldReading.of(capture, captures.events(capture.id()));
        }
        Captures.Heard heard = captures.heard(capture.id());
        return new RadioReading(capture, profile(capture))
                .read(heard.frames(), heard.holes(), captures.events(capture.id()));
    }

    private static StreamProfile profile(CaptureRow capture) {
        return StreamProfile.parse(capture.profileJson()).fold(profile -> profile, problems -> {
            throw new IllegalStateException("capture " + capture.id() + " was recorded with a profile that this version"
                    + " cannot read: "
                    + problems.stream().map(ProfileProblem::message).collect(Collectors.joining("; ")));
        });
    }
}
