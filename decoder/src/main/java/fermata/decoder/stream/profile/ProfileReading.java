package fermata.decoder.stream.profile;

import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/** What became of reading a profile. */
public sealed interface ProfileReading {
    /** What becomes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super StreamProfile, ? extends T> usable, Function<List<ProfileProblem>, ? extends T> unusable);

    /** The profile stands. */
    record Usable(StreamProfile profile) implements ProfileReading {
        public Usable {
            Objects.requireNonNull(profile, "profile");
        }

        @Override
        public <T> T fold(
                Function<? super StreamProfile, ? extends T> usable,
                Function<List<ProfileProblem>, ? extends T> unusable) {
            return usable.apply(profile);
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

        @Override
        public <T> T fold(
                Function<? super StreamProfile, ? extends T> usable,
                Function<List<ProfileProblem>, ? extends T> unusable) {
            return unusable.apply(problems);
        }
    }
}
