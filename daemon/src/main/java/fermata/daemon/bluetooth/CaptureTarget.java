package fermata.daemon.bluetooth;

import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import fermata.decoder.stream.profile.StreamProfile.KeepAlive;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which device to capture and what to do with it.
 *
 * @param service a service that it advertises, if that is how to know it
 * @param namePattern what the whole of its name must match, if that is how to know it; both must hold if both are given
 * @param subscribe characteristics to subscribe to, in this order
 * @param read characteristics to read after subscribing, and when the device has been silent
 * @param onConnect what to write after subscribing, in this order
 * @param keepAlive what to write again and again
 * @param spare characteristics among these that tell no turn, and that the device may lack or keep to itself
 * @param witness tells from what is read whether the cube was turned
 */
public record CaptureTarget(
        Optional<UUID> service,
        Optional<Pattern> namePattern,
        List<UUID> subscribe,
        List<UUID> read,
        List<Write> onConnect,
        List<KeepAlive> keepAlive,
        Set<UUID> spare,
        TurnWitness witness) {
    /** The standard Battery Level; the service may keep it to itself and offer its own battery interface instead. */
    public static final UUID BATTERY_LEVEL = UUID.fromString("00002a19-0000-1000-8000-00805f9b34fb");

    /** Copies the lists; refuses a target that fits anything or asks for nothing. */
    public CaptureTarget {
        subscribe = List.copyOf(subscribe);
        read = List.copyOf(read);
        onConnect = List.copyOf(onConnect);
        keepAlive = List.copyOf(keepAlive);
        spare = Set.copyOf(spare);
        if (service.isEmpty() && namePattern.isEmpty()) {
            throw new IllegalArgumentException("neither service nor namePattern says which device is meant");
        }
        if (subscribe.isEmpty()) {
            throw new IllegalArgumentException("subscribe is empty: there is nothing to capture");
        }
    }

    /** A target of whose values nothing is known. */
    public CaptureTarget(
            Optional<UUID> service,
            Optional<Pattern> namePattern,
            List<UUID> subscribe,
            List<UUID> read,
            List<Write> onConnect,
            List<KeepAlive> keepAlive,
            Set<UUID> spare) {
        this(service, namePattern, subscribe, read, onConnect, keepAlive, spare, TurnWitness.none());
    }

    /** What a stream profile asks for. */
    public static CaptureTarget of(StreamProfile profile) {
        return new CaptureTarget(
                profile.recognition().service(),
                profile.recognition().namePattern(),
                profile.subscribe().stream()
                        .map(StreamProfile.Source::characteristic)
                        .toList(),
                profile.read().stream()
                        .map(StreamProfile.Source::characteristic)
                        .toList(),
                profile.onConnect(),
                profile.keepAlive(),
                spare(profile),
                TurnWitness.of(profile));
    }

    /** The battery, and what only says how the cube lies: not every cube of a kind has the sensor. */
    private static Set<UUID> spare(StreamProfile profile) {
        Set<UUID> spare = Stream.concat(profile.subscribe().stream(), profile.read().stream())
                .filter(source -> source.frames().stream().allMatch(FrameLayout.Attitude.class::isInstance))
                .map(StreamProfile.Source::characteristic)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        spare.add(BATTERY_LEVEL);
        return spare;
    }

    /** Whether a device with this name (empty if none) and these services is meant. */
    boolean fits(String name, Set<UUID> services) {
        return service.map(services::contains).orElse(true)
                && namePattern.map(pattern -> pattern.matcher(name).matches()).orElse(true);
    }

    /** The characteristics without which a capture makes no sense: all that are not {@link #spare()}. */
    Set<UUID> required() {
        Set<UUID> all = new LinkedHashSet<>(subscribe);
        all.addAll(read);
        onConnect.forEach(write -> all.add(write.characteristic()));
        keepAlive.forEach(each -> all.add(each.write().characteristic()));
        all.removeAll(spare);
        return all;
    }

    /** The characteristics whose frames tell no turn, so that they need not be on the disk at once. */
    Set<String> patient() {
        return spare.stream().map(UUID::toString).collect(Collectors.toUnmodifiableSet());
    }

    boolean wantsBattery() {
        return subscribe.contains(BATTERY_LEVEL) || read.contains(BATTERY_LEVEL);
    }

    /** In words, for messages. */
    String inWords() {
        return namePattern.map(pattern -> "named \"" + pattern + "\"").orElse("")
                + (service.isPresent() && namePattern.isPresent() ? " " : "")
                + service.map(uuid -> "with service " + uuid).orElse("");
    }
}
