package fermata.daemon.store;

import fermata.analysis.event.Origin;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;
import java.util.UUID;

/**
 * What is known of a capture when it begins.
 *
 * @param uuid its own for ever, also on another board
 * @param bootId names the stretch between two starts of the machine in which the monotonic clock can be compared
 * @param startedWall civil time, as the board believed it or as it was set right since
 * @param isDated whether that is known to be right; the practice is of an unknown day else
 * @param startedNanos the monotonic clock at the same moment
 * @param zone whose midnights the practice days follow
 * @param origin cube, solver and hand
 * @param source what told the turns: "radio", or the name of the file
 */
public record CaptureStart(
        UUID uuid,
        String bootId,
        Instant startedWall,
        boolean isDated,
        long startedNanos,
        ZoneId zone,
        Origin origin,
        String source) {
    public CaptureStart {
        Objects.requireNonNull(uuid, "uuid");
        Objects.requireNonNull(bootId, "bootId");
        Objects.requireNonNull(startedWall, "startedWall");
        Objects.requireNonNull(zone, "zone");
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(source, "source");
    }

    /** One whose date is right. */
    public CaptureStart(
            UUID uuid,
            String bootId,
            Instant startedWall,
            long startedNanos,
            ZoneId zone,
            Origin origin,
            String source) {
        this(uuid, bootId, startedWall, true, startedNanos, zone, origin, source);
    }
}
