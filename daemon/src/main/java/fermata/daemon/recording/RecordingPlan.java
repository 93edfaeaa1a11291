package fermata.daemon.recording;

import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.decoder.stream.profile.StreamProfile;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;

/**
 * What to record and as what.
 *
 * @param busAddress {@link BluetoothCapture#SYSTEM_BUS}, or a D-Bus address
 * @param profile how the cube talks
 * @param profileText the profile's file, kept with the capture
 * @param origin cube, solver and hand
 * @param startedWall civil time of the beginning
 * @param isDated whether that is known to be right; {@link CaptureDate} finds it out else
 * @param zone whose midnights the practice days follow
 * @param settings patience of the link and the journal
 */
public record RecordingPlan(
        String busAddress,
        StreamProfile profile,
        String profileText,
        Origin origin,
        Instant startedWall,
        boolean isDated,
        ZoneId zone,
        BluetoothCapture.Settings settings) {
    public RecordingPlan {
        Objects.requireNonNull(busAddress, "busAddress");
        Objects.requireNonNull(profile, "profile");
        Objects.requireNonNull(profileText, "profileText");
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(startedWall, "startedWall");
        Objects.requireNonNull(zone, "zone");
        Objects.requireNonNull(settings, "settings");
    }

    /** One whose date is right. */
    public RecordingPlan(
            String busAddress,
            StreamProfile profile,
            String profileText,
            Origin origin,
            Instant startedWall,
            ZoneId zone,
            BluetoothCapture.Settings settings) {
        this(busAddress, profile, profileText, origin, startedWall, true, zone, settings);
    }

    /** The same, begun at another moment, which nobody has said is right. */
    public RecordingPlan begunAt(Instant moment) {
        return new RecordingPlan(busAddress, profile, profileText, origin, moment, false, zone, settings);
    }
}
