package fermata.decoder.finding;

import fermata.decoder.stream.profile.StreamProfile;
import java.util.List;
import java.util.Objects;

/** What a drill says about how a device lays out its frames. */
public sealed interface Finding {
    /**
     * A profile that reads every turn of the drill right.
     *
     * @param profile for this kind of device
     * @param unexplained ranges of bits of its frames that move and that nothing explains
     * @param proof what speaks for it
     */
    record Sound(StreamProfile profile, List<String> unexplained, Proof proof) implements Finding {
        public Sound {
            Objects.requireNonNull(profile, "profile");
            Objects.requireNonNull(proof, "proof");
            unexplained = List.copyOf(unexplained);
        }
    }

    /** No profile, and what would settle it. At least one doubt. */
    record Doubtful(List<Doubt> doubts) implements Finding {
        public Doubtful {
            doubts = List.copyOf(doubts);
            if (doubts.isEmpty()) {
                throw new IllegalArgumentException("doubts is empty: nothing says why there is no profile");
            }
        }
    }

    /** The frames are enciphered: no profile can read them as they are. The evidence is in words for people. */
    record Enciphered(List<String> evidence) implements Finding {
        public Enciphered {
            evidence = List.copyOf(evidence);
        }
    }
}
