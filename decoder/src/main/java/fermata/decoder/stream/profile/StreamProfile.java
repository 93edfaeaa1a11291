package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * How one kind of cube talks: how to know it, what to subscribe to, read and write, and how its frames are laid out.
 * Immutable; safe for any thread.
 *
 * @param name what people call this kind of cube
 * @param recognition how to know it when it advertises
 * @param colours the colour of each face, all six
 * @param bonding whether the device must be bonded with first
 * @param subscribe characteristics whose notifications are wanted, in this order
 * @param read characteristics to read after connecting and when the cube has been silent
 * @param onConnect what to write after subscribing, in this order
 * @param keepAlive what to write again and again
 */
public record StreamProfile(
        String name,
        Recognition recognition,
        Map<Face, String> colours,
        Bonding bonding,
        List<Source> subscribe,
        List<Source> read,
        List<Write> onConnect,
        List<KeepAlive> keepAlive) {
    /** What a device asks for before it lets anyone read or subscribe. */
    public enum Bonding {
        NONE,
        /** It refuses readers that are not paired with it, and keeps the pairing. */
        REQUIRED
    }

    /**
     * How to know the cube. At least one of the two is there; if both are, both must hold.
     *
     * @param service a service UUID it advertises or has
     * @param namePattern a regular expression that the whole of its name must match
     */
    public record Recognition(Optional<UUID> service, Optional<Pattern> namePattern) {
        public Recognition {
            Objects.requireNonNull(service, "service");
            Objects.requireNonNull(namePattern, "namePattern");
            if (service.isEmpty() && namePattern.isEmpty()) {
                throw new IllegalArgumentException("recognition has neither service nor name");
            }
        }

        /** Whether a device with this name ("" if none) and these services is such a cube. */
        public boolean fits(String deviceName, List<UUID> services) {
            return service.map(services::contains).orElse(true)
                    && namePattern.map(p -> p.matcher(deviceName).matches()).orElse(true);
        }
    }

    /**
     * A characteristic and what its values may be.
     *
     * @param characteristic its UUID
     * @param frames layouts to try, first fit by constants wins
     * @param ignoreOthers whether a value that fits the constants of none is left alone instead of counted as broken
     */
    public record Source(UUID characteristic, List<FrameLayout> frames, boolean ignoreOthers) {
        public Source {
            Objects.requireNonNull(characteristic, "characteristic");
            frames = List.copyOf(frames);
        }
    }

    /**
     * Bytes to write.
     *
     * @param characteristic where to
     * @param bytes what, copied both ways
     * @param withResponse whether the device must acknowledge
     */
    public record Write(UUID characteristic, byte[] bytes, boolean withResponse) {
        public Write {
            Objects.requireNonNull(characteristic, "characteristic");
            bytes = bytes.clone();
        }

        @Override
        public byte[] bytes() {
            return bytes.clone();
        }
    }

    /** A write repeated every {@code periodMillis} while connected. */
    public record KeepAlive(Write write, int periodMillis) {
        public KeepAlive {
            Objects.requireNonNull(write, "write");
            if (periodMillis < 1) {
                throw new IllegalArgumentException("periodMillis " + periodMillis + " is not positive");
            }
        }
    }

    public StreamProfile {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(recognition, "recognition");
        Objects.requireNonNull(bonding, "bonding");
        colours = Map.copyOf(colours);
        subscribe = List.copyOf(subscribe);
        read = List.copyOf(read);
        onConnect = List.copyOf(onConnect);
        keepAlive = List.copyOf(keepAlive);
    }

    /**
     * Reads a profile. Never throws for what the text says: all problems come back together. Linear in the text.
     *
     * @param json the whole file
     */
    public static ProfileReading parse(String json) {
        return new ProfileParser().parse(json);
    }

    /** Whether frames number their turns, so that it shows how many were lost. */
    public boolean numbersTurns() {
        return turnLayouts().anyMatch(layout -> layout.sequence().isPresent());
    }

    /** Whether the cube's own clock times its turns; where states alone tell of turns, their clock does. */
    public boolean timesTurns() {
        return turnLayouts().findAny().isPresent()
                ? turnLayouts().anyMatch(layout -> layout.clock().isPresent())
                : layouts(subscribe)
                        .anyMatch(layout -> layout instanceof FrameLayout.State state
                                && state.clock().isPresent());
    }

    private Stream<FrameLayout.Turns> turnLayouts() {
        return Stream.concat(layouts(subscribe), layouts(read))
                .filter(FrameLayout.Turns.class::isInstance)
                .map(FrameLayout.Turns.class::cast);
    }

    private static Stream<FrameLayout> layouts(List<Source> sources) {
        return sources.stream().flatMap(source -> source.frames().stream());
    }

    /** What the profile says, as label and text, in a fixed order: for a person who checks it. */
    public List<ProfileTrait> describe() {
        return ProfileDescription.of(this);
    }
}
