package fermata.decoder.stream;

import fermata.decoder.stream.FrameReading.BatteryFrame;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.Ignored;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Battery;
import fermata.decoder.stream.profile.FrameLayout.Constant;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.StreamProfile;
import fermata.decoder.stream.profile.StreamProfile.Source;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Reads single values by a profile. Never throws for bad bytes. Immutable and thread-safe; a frame costs a step a bit.
 */
public final class FrameReader {
    private static final String OTHER = "a value that is of no use here";

    private final Map<UUID, Source> sources = new HashMap<>();

    /** For cubes of one kind. */
    public FrameReader(StreamProfile profile) {
        Stream.concat(profile.subscribe().stream(), profile.read().stream())
                .forEach(source -> sources.merge(source.characteristic(), source, FrameReader::both));
    }

    private static Source both(Source a, Source b) {
        List<FrameLayout> frames = Stream.concat(a.frames().stream(), b.frames().stream())
                .distinct()
                .toList();
        return new Source(a.characteristic(), frames, a.ignoreOthers() || b.ignoreOthers());
    }

    /** What a value of a characteristic says. */
    public FrameReading read(UUID characteristic, byte[] bytes) {
        Source source = sources.get(characteristic);
        if (source == null) {
            return new Ignored("the profile names no characteristic " + characteristic);
        }
        List<FrameFault> misfits = new ArrayList<>();
        for (FrameLayout layout : source.frames()) {
            Optional<FrameFault> misfit = misfit(layout.envelope(), bytes);
            if (misfit.isEmpty()) {
                return readAs(layout, bytes);
            }
            if (!(layout instanceof FrameLayout.Other)) {
                misfits.add(misfit.get());
            }
        }
        // A layout whose constants fit and whose length does not says more than one that was never meant.
        Optional<FrameFault> wrongLength = misfits.stream()
                .filter(fault -> fault.kind() != FrameFault.Kind.WRONG_CONSTANT)
                .findFirst();
        if (wrongLength.isEmpty() && source.ignoreOthers()) {
            return new Ignored("a value of " + characteristic + " fits no frame of the profile");
        }
        return misfits.isEmpty() ? new Ignored(OTHER) : new Broken(wrongLength.orElseGet(() -> misfits.get(0)));
    }

    private static Optional<FrameFault> misfit(Envelope envelope, byte[] bytes) {
        for (int i = 0; i < envelope.constants().size(); i++) {
            Constant constant = envelope.constants().get(i);
            BitField field = constant.field();
            if (field.endBits() <= bytes.length * 8 && field.read(bytes) != constant.value()) {
                return Optional.of(new FrameFault(
                        FrameFault.Kind.WRONG_CONSTANT,
                        envelope.name() + ".constants[" + i + "]",
                        field.firstByte(),
                        Long.toString(field.read(bytes)),
                        Long.toString(constant.value())));
            }
        }
        if (bytes.length >= envelope.minBytes() && bytes.length <= envelope.maxBytes()) {
            return Optional.empty();
        }
        boolean isShort = bytes.length < envelope.minBytes();
        return Optional.of(new FrameFault(
                isShort ? FrameFault.Kind.TRUNCATED : FrameFault.Kind.TOO_LONG,
                envelope.name() + ".bytes",
                bytes.length,
                "a frame of " + bytes.length + " bytes",
                (isShort ? "at least " + envelope.minBytes() : "at most " + envelope.maxBytes()) + " bytes"));
    }

    private static FrameReading readAs(FrameLayout layout, byte[] bytes) {
        Optional<FrameFault> wrong = wrongChecksum(layout.envelope(), bytes);
        if (wrong.isPresent()) {
            return new Broken(wrong.get());
        }
        return layout.fold(
                turns -> new TurnsReader(turns, bytes).read(),
                state -> StateReader.read(state, bytes),
                attitude -> OrientationReader.read(attitude, bytes),
                battery -> battery(battery, bytes),
                other -> new Ignored(OTHER));
    }

    private static Optional<FrameFault> wrongChecksum(Envelope envelope, byte[] bytes) {
        for (int i = 0; i < envelope.checksums().size(); i++) {
            Checksum checksum = envelope.checksums().get(i);
            BitField field = checksum.fieldIn(bytes.length);
            long stated = field.read(bytes);
            long computed = checksum.compute(bytes);
            if (stated != computed) {
                return Optional.of(new FrameFault(
                        FrameFault.Kind.WRONG_CHECKSUM,
                        envelope.name() + ".checksums[" + i + "]",
                        field.firstByte(),
                        "0x" + Long.toHexString(stated),
                        "0x" + Long.toHexString(computed) + " by the bytes received"));
            }
        }
        return Optional.empty();
    }

    private static FrameReading battery(Battery battery, byte[] bytes) {
        long percent = battery.percent().read(bytes);
        if (percent <= 100) {
            return new BatteryFrame((int) percent);
        }
        return new Broken(new FrameFault(
                FrameFault.Kind.OUT_OF_RANGE,
                battery.envelope().name() + ".percent",
                battery.percent().firstByte(),
                Long.toString(percent),
                "0..100"));
    }
}
