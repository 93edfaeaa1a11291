package fermata.daemon.bluetooth;

import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.time.MonotonicClock;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * The tap of the device that was last listened to, with its subscription on the bus. It outlasts a session, so that
 * what the device says between the end of one and the set-up of the next is kept. Owned by the central's thread.
 */
final class KeptTap implements AutoCloseable {
    private record Kept(BluezBus bus, String owner, String devicePath, FrameTap tap, Subscription subscription) {
        boolean isOf(BluezBus otherBus, String otherOwner, String otherPath) {
            return bus == otherBus && owner.equals(otherOwner) && devicePath.equals(otherPath);
        }
    }

    private final Set<UUID> spare;
    private final MonotonicClock clock;
    private final CaptureIntake intake;
    private final LinkWatch watch;
    private Optional<Kept> kept = Optional.empty();

    KeptTap(Set<UUID> spare, MonotonicClock clock, CaptureIntake intake, LinkWatch watch) {
        this.spare = spare;
        this.clock = clock;
        this.intake = intake;
        this.watch = watch;
    }

    /** The tap of a device in one life of the service, at rest: the one that is there, or else a new one. */
    FrameTap of(BluezBus bus, String owner, String devicePath) {
        if (kept.filter(each -> each.isOf(bus, owner, devicePath)).isEmpty()) {
            close();
            FrameTap tap = new FrameTap(devicePath, spare, clock, intake, watch);
            kept = Optional.of(new Kept(bus, owner, devicePath, tap, bus.followDevice(owner, devicePath, tap)));
        }
        return kept.orElseThrow().tap();
    }

    /** Ends the subscription. */
    @Override
    public void close() {
        kept.ifPresent(each -> {
            each.tap().close();
            each.subscription().close();
        });
        kept = Optional.empty();
    }
}
