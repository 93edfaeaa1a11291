package fermata.decoder.stream.profile;

import java.util.List;
import java.util.Objects;

/** What became of reading a profile. */
public sealed interface ProfileReading {
    /** The profile stands. */
    record Usable(StreamProfile profile) implements ProfileReading {
        public Usable {
            Objects.requireNonNull(profile, "profile");
        }
    }

    /** It does not, for all these reasons, in the order in which they were met. */
    record Unusable(List<ProfileProblem> problems) implements ProfileReading {
        public Unusable {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("problems is empty: nothing says why the profile is unusable");
            }
        }
    }
}
