package fermata.decoder.finding;

import fermata.decoder.cube.Face;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import fermata.decoder.stream.profile.StreamProfile.Bonding;
import fermata.decoder.stream.profile.StreamProfile.Recognition;
import fermata.decoder.stream.profile.StreamProfile.Source;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

/** Makes a profile of what was found. Stateless. */
final class ProfileAssembly {
    /** Any six will do: no frame tells what the stickers look like, and the owner may change them. */
    private static final Map<Face, String> COLOURS = new EnumMap<>(Map.of(
            Face.U, "#ffffff", Face.R, "#c41e3a", Face.F, "#009e60", Face.D, "#ffd500", Face.L, "#ff5800", Face.B,
            "#0051ba"));

    private ProfileAssembly() {}

    static StreamProfile of(PromptedRecording recording, UUID characteristic, FrameLayout layout) {
        List<FrameLayout> layouts = new ArrayList<>(List.of(layout));
        layouts.addAll(others(recording, characteristic, layout.envelope().maxBytes()));
        Optional<UUID> service = recording.services().stream().findFirst();
        Optional<Pattern> name = recording.device().isEmpty()
                ? Optional.empty()
                : Optional.of(Pattern.compile(Pattern.quote(recording.device())));
        return new StreamProfile(
                recording.device().isEmpty() ? "unnamed cube" : recording.device(),
                new Recognition(name.isPresent() ? Optional.empty() : service, name),
                COLOURS,
                recording.bonded() ? Bonding.REQUIRED : Bonding.NONE,
                List.of(new Source(characteristic, layouts, true)),
                List.of(),
                List.of(),
                List.of());
    }

    /** Frames of other lengths that came on the same characteristic, so that they do not count as broken. */
    private static List<FrameLayout> others(PromptedRecording recording, UUID characteristic, int length) {
        return recording.values().stream()
                .filter(value -> value.characteristic().equals(characteristic))
                .map(value -> value.bytes().length)
                .filter(bytes -> bytes != length && bytes > 0)
                .distinct()
                .sorted()
                .<FrameLayout>map(bytes -> new FrameLayout.Other(
                        new FrameLayout.Envelope("other" + bytes, bytes, bytes, List.of(), List.of())))
                .toList();
    }
}
