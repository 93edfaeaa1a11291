package fermata.decoder.stream.profile;

import java.util.Objects;

/** One line of a profile's description. */
public record ProfileTrait(String label, String text) {
    public ProfileTrait {
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(text, "text");
    }
}
