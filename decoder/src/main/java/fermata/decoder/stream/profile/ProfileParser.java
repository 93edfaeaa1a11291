package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.stream.profile.StreamProfile.Bonding;
import fermata.decoder.stream.profile.StreamProfile.KeepAlive;
import fermata.decoder.stream.profile.StreamProfile.Recognition;
import fermata.decoder.stream.profile.StreamProfile.Source;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads a whole profile and collects what is wrong with it. One use. */
final class ProfileParser {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private final List<ProfileProblem> problems = new ArrayList<>();
    private final Map<String, FrameLayout> frames = new LinkedHashMap<>();
    private final Set<String> used = new LinkedHashSet<>();

    ProfileReading parse(String json) {
        JsonNode root;
        try {
            root = JSON.readTree(json);
        } catch (JacksonException e) {
            String where = e.getLocation() == null
                    ? "text"
                    : "line " + e.getLocation().getLineNr() + ", column "
                            + e.getLocation().getColumnNr();
            // What follows the object is the one thing that Jackson says in terms of its own settings.
            String why = e instanceof DatabindException ? "something follows the object" : e.getOriginalMessage();
            return new ProfileReading.Unusable(List.of(new ProfileProblem("$", where + ": " + why, "one JSON object")));
        }
        JsonSpot spot = new JsonSpot(root, "$", problems);
        if (!spot.isObject()) {
            spot.expected("one JSON object");
            return new ProfileReading.Unusable(problems);
        }
        Optional<StreamProfile> profile = profile(spot);
        return profile.<ProfileReading>map(ProfileReading.Usable::new)
                .orElseGet(() -> new ProfileReading.Unusable(problems));
    }

    private Optional<StreamProfile> profile(JsonSpot root) {
        root.member("format", "\"stream-profile\"").choice(Map.of("stream-profile", true), true);
        root.member("version", "1").integer(1, 1);
        String name = root.member("name", "a name").text("a name");
        Optional<Recognition> recognition = recognition(root.member("recognise", "an object with service or name"));
        Map<Face, String> colours = colours(root.member("colours", "an object with the colour of each face"));
        Bonding bonding = root.optional("bonding")
                .map(s -> s.choice(Map.of("required", Bonding.REQUIRED), Bonding.NONE))
                .orElse(Bonding.NONE);
        JsonSpot frameSpot = root.member("frames", "an object of frame layouts");
        frameSpot
                .entries("an object of frame layouts by name")
                .forEach((frame, spot) -> frames.put(frame, FrameParser.frame(spot, frame)));
        JsonSpot subscribeSpot = root.member("subscribe", "an array of characteristics");
        List<Source> subscribe =
                subscribeSpot.items(1).stream().map(this::source).toList();
        List<Source> read = list(root, "read").stream().map(this::source).toList();
        List<Write> onConnect = list(root, "onConnect").stream()
                .map(spot -> {
                    Write write = write(spot);
                    spot.close();
                    return write;
                })
                .toList();
        List<KeepAlive> keepAlive =
                list(root, "keepAlive").stream().map(this::keepAlive).toList();
        root.close();
        checkTogether(frameSpot, subscribeSpot, subscribe);
        return problems.isEmpty()
                ? recognition.map(
                        r -> new StreamProfile(name, r, colours, bonding, subscribe, read, onConnect, keepAlive))
                : Optional.empty();
    }

    private static List<JsonSpot> list(JsonSpot root, String name) {
        return root.optional(name).map(s -> s.items(0)).orElse(List.of());
    }

    private Optional<Recognition> recognition(JsonSpot spot) {
        Optional<UUID> service = spot.optional("service").map(FieldParser::uuid);
        Optional<Pattern> pattern = spot.optional("name").flatMap(ProfileParser::pattern);
        spot.close();
        if (spot.isObject()
                && spot.optional("service").isEmpty()
                && spot.optional("name").isEmpty()) {
            spot.expected("a service, a name, or both");
        }
        return service.isEmpty() && pattern.isEmpty()
                ? Optional.empty()
                : Optional.of(new Recognition(service, pattern));
    }

    private static Optional<Pattern> pattern(JsonSpot spot) {
        try {
            return Optional.of(Pattern.compile(spot.text("a regular expression")));
        } catch (PatternSyntaxException e) {
            spot.expected("a regular expression: " + e.getDescription() + " at index " + e.getIndex());
            return Optional.empty();
        }
    }

    private static Map<Face, String> colours(JsonSpot spot) {
        Map<Face, String> colours = new EnumMap<>(Face.class);
        for (Face face : Face.values()) {
            JsonSpot member = spot.member(face.name(), "a colour #rrggbb");
            String text = member.text("a colour #rrggbb");
            if (!text.isEmpty() && !text.matches("#[0-9a-fA-F]{6}")) {
                member.expected("a colour #rrggbb");
            } else if (!text.isEmpty() && colours.values().stream().anyMatch(text::equalsIgnoreCase)) {
                member.expected("a colour that no other face has");
            }
            colours.put(face, text);
        }
        spot.close();
        return colours;
    }

    private Source source(JsonSpot spot) {
        UUID characteristic = FieldParser.uuid(spot.member("characteristic", "a UUID"));
        List<FrameLayout> layouts = new ArrayList<>();
        for (JsonSpot item :
                spot.member("frames", "an array of names of frames").items(1)) {
            String name = item.text("the name of a frame");
            used.add(name);
            if (frames.containsKey(name)) {
                layouts.add(frames.get(name));
            } else if (!name.isEmpty()) {
                item.expected("the name of one of the frames: " + String.join(", ", frames.keySet()));
            }
        }
        boolean ignoreOthers = spot.optional("others")
                .map(s -> s.choice(Map.of("broken", false, "ignored", true), false))
                .orElse(false);
        spot.close();
        return new Source(characteristic, layouts, ignoreOthers);
    }

    private static Write write(JsonSpot spot) {
        UUID characteristic = FieldParser.uuid(spot.member("characteristic", "a UUID"));
        String what = "1 to " + FieldParser.MAX_FRAME_BYTES + " bytes as pairs of hexadecimal digits";
        JsonSpot hexSpot = spot.member("hex", what);
        String hex = hexSpot.text(what).replace(" ", "");
        boolean readable = hex.matches("([0-9a-fA-F]{2}){1," + FieldParser.MAX_FRAME_BYTES + "}");
        if (!readable && !hex.isEmpty()) {
            hexSpot.expected(what);
        }
        boolean response = spot.optional("response").map(JsonSpot::flag).orElse(true);
        return new Write(characteristic, readable ? HexFormat.of().parseHex(hex) : new byte[0], response);
    }

    private KeepAlive keepAlive(JsonSpot spot) {
        Write write = write(spot);
        int period =
                (int) spot.member("everyMillis", "milliseconds between writes").integer(100, 86_400_000);
        spot.close();
        return new KeepAlive(write, period);
    }

    /** What no single place can show. */
    private void checkTogether(JsonSpot frameSpot, JsonSpot subscribeSpot, List<Source> subscribe) {
        boolean hearsTurns = subscribe.stream()
                .flatMap(s -> s.frames().stream())
                .anyMatch(f -> f instanceof FrameLayout.Turns || f instanceof FrameLayout.State);
        if (!hearsTurns && subscribeSpot.isArray()) {
            subscribeSpot.expected("a characteristic with a frame of kind turns, or else of kind state");
        }
        ProfileAgreement.check(frameSpot, frames.values());
        frameSpot.entries("frames").forEach((name, spot) -> {
            if (!used.contains(name)) {
                spot.expected("a frame that subscribe or read names");
            }
        });
    }
}
