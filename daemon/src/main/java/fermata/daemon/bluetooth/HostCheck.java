package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.LinkSession.Surroundings;
import fermata.daemon.capture.LinkFault;
import java.time.Duration;
import java.util.Collection;

/**
 * Asks bus and service, not the device, whether what a link stands on is there, since no signal says that a signal was
 * lost. It costs no radio: three short messages within the board. Owned by the central's thread.
 */
final class HostCheck {
    /** How often: so that a lost word is made up for within a few seconds. */
    static final Duration EVERY = Duration.ofSeconds(5);
    /** Longest wait for what the service knows without asking the device. */
    private static final Duration LIMIT = Duration.ofSeconds(5);

    private static final Duration SECOND_LOOK = Duration.ofMillis(250);

    private final BluezBus bus;
    private final String devicePath;
    private final Collection<String> subscribed;
    private final FrameTap tap;
    private final Surroundings around;

    private int unanswered;

    /** For a device, and the paths of the characteristics whose subscription must stand. */
    HostCheck(BluezBus bus, String devicePath, Collection<String> subscribed, FrameTap tap, Surroundings around) {
        this.bus = bus;
        this.devicePath = devicePath;
        this.subscribed = subscribed;
        this.tap = tap;
        this.around = around;
    }

    /** Throws when the link has nothing to stand on; one that went without a signal shows as a loss. */
    void run() {
        bus.verifyOwner();
        tap.takeOdd().map(FaultTable::odd).ifPresent(odd -> around.refused(odd.fault(), odd.getMessage()));
        long heard = tap.turnFrames();
        if (!around.watch().isOver()) {
            checkLink(heard);
        }
        if (!around.watch().isOver() && tap.turnFrames() == heard) {
            checkSubscriptions();
        }
    }

    private void checkLink(long heard) {
        try {
            if (!isLinked()) {
                around.watch().pause(around.watch()::isOver, SECOND_LOOK);
                around.watch().deviceConnected(devicePath, isLinked());
            }
            unanswered = 0;
        } catch (LinkException e) {
            unanswered++;
            if (unanswered > 1 && tap.turnFrames() == heard && !around.watch().isOver()) {
                throw new LinkException(e.fault(), "the service knows nothing of the link: " + e.getMessage(), e);
            }
        }
    }

    private boolean isLinked() {
        Object value = property(devicePath, BluezBus.DEVICE, "Connected");
        return BusValue.flag(value).orElseThrow(() -> FaultTable.odd("Connected is " + BusValue.inWords(value)));
    }

    private void checkSubscriptions() {
        for (String path : subscribed) {
            if (isSilenced(path)) {
                throw new LinkException(LinkFault.RETRY_FAST, "the service has dropped the subscription to " + path);
            }
        }
    }

    /** Only a plain no counts: not every version of the service tells. */
    private boolean isSilenced(String path) {
        try {
            return BusValue.flag(property(path, BluezBus.CHARACTERISTIC, "Notifying"))
                    .map(notifying -> !notifying)
                    .orElse(false);
        } catch (LinkException e) {
            return false;
        }
    }

    private Object property(String path, String interfaceName, String name) {
        return BusValue.bare(bus.call(LIMIT, path, BluezBus.PROPERTIES, "Get", "ss", interfaceName, name));
    }
}
