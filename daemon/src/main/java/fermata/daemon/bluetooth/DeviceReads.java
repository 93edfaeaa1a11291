package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.LinkSession.Surroundings;
import fermata.daemon.bluetooth.ObjectSnapshot.Device;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.time.Deadline;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What is read of a device in one session: each answer is a frame, and some tell whether the device was turned. Owned
 * by the central's thread.
 */
final class DeviceReads {
    /** How late a turn may be notified that a read has told already. */
    private static final Duration NOTIFIED_WITHIN = Duration.ofSeconds(1);

    private static final Duration LOOK_AGAIN = Duration.ofMillis(50);

    private final BluezBus bus;
    private final Device device;
    private final CaptureTarget target;
    private final Map<UUID, String> paths;
    private final FrameTap tap;
    private final Surroundings around;

    private Optional<Object> place = Optional.empty();
    private long turnFramesAtPlace;
    private boolean work;

    /** For a device whose characteristics have these paths. */
    DeviceReads(
            BluezBus bus,
            Device device,
            CaptureTarget target,
            Map<UUID, String> paths,
            FrameTap tap,
            Surroundings around) {
        this.bus = bus;
        this.device = device;
        this.target = target;
        this.paths = paths;
        this.tap = tap;
        this.around = around;
    }

    /** Whether what is to be read could be read in this session, so that no answer means that nobody is there. */
    boolean work() {
        return work;
    }

    /** Turns are worth having without what the device does not let read; it is asked again while it is quiet. */
    void tryAll() {
        try {
            all();
        } catch (LinkException e) {
            if (around.watch().isOver()) {
                throw e;
            }
            around.refused(e.fault(), e.getMessage());
        }
    }

    /** Reads what is to be read. Throws when the device does not answer, or was turned without having said so. */
    void all() {
        for (UUID uuid : target.read()) {
            if (uuid.equals(CaptureTarget.BATTERY_LEVEL)) {
                battery();
            } else {
                read(uuid);
            }
        }
        work = !target.read().isEmpty();
    }

    private void read(UUID uuid) {
        long turnFramesBefore = tap.turnFrames();
        byte[] value = bus.readValue(paths.get(uuid));
        tap.take(uuid, around.clock().nanos(), value);
        target.witness().place(uuid, value).ifPresent(now -> notePlace(now, turnFramesBefore));
    }

    /** A cube that was turned without a word has lost its subscription, whatever its link looks like. */
    private void notePlace(Object now, long turnFramesBefore) {
        boolean turned = place.isPresent() && !place.get().equals(now);
        long heardBefore = turnFramesAtPlace;
        place = Optional.of(now);
        turnFramesAtPlace = turnFramesBefore;
        if (turned) {
            Deadline deadline = around.watch().patience(NOTIFIED_WITHIN);
            while (tap.turnFrames() == heardBefore && !around.watch().isOver()) {
                if (deadline.hasPassed()) {
                    throw new LinkException(
                            LinkFault.RETRY_FAST, device.address() + " was turned, but its subscription says nothing");
                }
                around.watch().pause(around.watch()::isOver, LOOK_AGAIN);
            }
        }
    }

    private void battery() {
        Optional<byte[]> percent = bus.objects().battery(device.path());
        if (percent.isPresent()) {
            tap.take(CaptureTarget.BATTERY_LEVEL, around.clock().nanos(), percent.get());
        } else if (paths.containsKey(CaptureTarget.BATTERY_LEVEL)) {
            tryBattery();
        }
    }

    private void tryBattery() {
        try {
            read(CaptureTarget.BATTERY_LEVEL);
        } catch (LinkException e) {
            if (around.watch().isOver()) {
                throw e;
            }
        }
    }
}
