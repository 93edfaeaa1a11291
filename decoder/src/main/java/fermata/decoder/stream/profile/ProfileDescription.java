package fermata.decoder.stream.profile;

import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.StreamProfile.Source;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Puts a profile into words. Stateless. */
final class ProfileDescription {
    private ProfileDescription() {}

    static List<ProfileTrait> of(StreamProfile profile) {
        List<ProfileTrait> traits = new ArrayList<>();
        traits.add(new ProfileTrait("name", profile.name()));
        profile.recognition().service().ifPresent(s -> traits.add(new ProfileTrait("service", s.toString())));
        profile.recognition().namePattern().ifPresent(p -> traits.add(new ProfileTrait("device name", p.pattern())));
        if (profile.bonding() == StreamProfile.Bonding.REQUIRED) {
            traits.add(new ProfileTrait("bonding", "required: the device is paired with before anything is read"));
        }
        profile.subscribe().forEach(s -> traits.add(new ProfileTrait("subscribe", source(s))));
        profile.read().forEach(s -> traits.add(new ProfileTrait("read", source(s))));
        profile.onConnect()
                .forEach(w -> traits.add(new ProfileTrait(
                        "write on connect",
                        w.characteristic() + " " + HexFormat.of().formatHex(w.bytes()))));
        profile.keepAlive()
                .forEach(k -> traits.add(new ProfileTrait(
                        "keep alive",
                        k.write().characteristic() + " "
                                + HexFormat.of().formatHex(k.write().bytes()) + " every " + k.periodMillis() + " ms")));
        profile.subscribe().stream()
                .flatMap(s -> s.frames().stream())
                .filter(FrameLayout.Turns.class::isInstance)
                .map(FrameLayout.Turns.class::cast)
                .distinct()
                .forEach(turns -> addTurns(traits, turns));
        profile.subscribe().stream()
                .flatMap(s -> s.frames().stream())
                .filter(FrameLayout.Attitude.class::isInstance)
                .map(FrameLayout.Attitude.class::cast)
                .distinct()
                .forEach(attitude -> traits.add(new ProfileTrait("orientation", orientation(attitude))));
        traits.add(new ProfileTrait(
                "colours",
                profile.colours().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(e -> e.getKey() + " " + e.getValue())
                        .collect(Collectors.joining(", "))));
        return List.copyOf(traits);
    }

    private static String source(Source source) {
        return source.characteristic() + ": "
                + source.frames().stream()
                        .map(f -> f.envelope().name() + " " + bytes(f))
                        .collect(Collectors.joining(" or "))
                + (source.ignoreOthers() ? ", others ignored" : "");
    }

    private static String bytes(FrameLayout frame) {
        FrameLayout.Envelope e = frame.envelope();
        return (e.minBytes() == e.maxBytes() ? "" : e.minBytes() + " to ") + e.maxBytes() + " bytes";
    }

    private static void addTurns(List<ProfileTrait> traits, FrameLayout.Turns turns) {
        traits.add(new ProfileTrait(
                "loss",
                turns.sequence()
                        .map(s -> "seen and counted, modulo " + (s.allOnes() + 1))
                        .orElse("not seen: the frames carry no sequence number")));
        traits.add(new ProfileTrait(
                "repair", turns.history().map(ProfileDescription::repair).orElse("none")));
        traits.add(new ProfileTrait(
                "time",
                turns.clock()
                        .map(c -> "device clock, tick " + c.tickMicros() + " us, wraps after "
                                + Math.round(c.tickMicros() * (c.field().allOnes() + 1.0) / 1e6) + " s")
                        .orElse("arrival: the frames carry no clock")));
        traits.add(new ProfileTrait(
                "turn codes",
                turns.turns().size() + " ("
                        + turns.turns().entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(e -> e.getKey() + "=" + e.getValue())
                                .collect(Collectors.joining(" "))
                        + ")"));
    }

    private static String orientation(FrameLayout.Attitude attitude) {
        BitField first = attitude.components().get(0);
        String numbers = attitude.floats()
                ? "floats"
                : "whole numbers of " + first.widthBits() + " bits, " + attitude.one() + " stands for 1";
        String times = attitude.clock().isPresent() ? "timed by the device clock" : "timed by arrival";
        return "quaternions, " + numbers + ", " + times + "; which way is north is not asked";
    }

    private static String repair(History history) {
        String times = history.time().fold(none -> "without times", absolute -> "with times", before -> "with times");
        return "from the last " + history.entries() + " turns, " + times;
    }
}
