package fermata.daemon.virtualcube;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * What lies between a turn and the bus: a notification leaves at the next connection event, then the host takes its
 * time, most often about a millisecond, sometimes much longer. It can be late, never early, and never overtakes
 * another.
 *
 * <p>The host's delay is Pareto distributed with exponent 1.5, which with a scale of 0.6 ms gives a median of 0.95 ms
 * and a 99th percentile of 13 ms: what a real bus showed at 100 notifications a second (1.0 and 10 to 17 ms). It is
 * cut at one second.
 *
 * @param connectionInterval 7.5 ms to 4 s (Bluetooth Core); Linux asks for 30 to 50 ms
 * @param hostScale least delay of the host
 * @param lossShare share of notifications that are lost on purpose, 0 to 1
 * @param duplicateShare share of notifications that are sent twice, 0 to 1
 * @param disconnectShare chance, before each turn, that the link is cut if it is up, 0 to 1
 * @param outage how long the cube then stays away
 */
public record RadioModel(
        Duration connectionInterval,
        Duration hostScale,
        double lossShare,
        double duplicateShare,
        double disconnectShare,
        Duration outage) {
    private static final double TAIL_EXPONENT = 1.5;
    private static final long LONGEST_HOST_DELAY_NANOS = 1_000_000_000L;

    /** Refuses what no radio does. */
    public RadioModel {
        if (connectionInterval.compareTo(Duration.ofNanos(7_500_000)) < 0
                || connectionInterval.compareTo(Duration.ofSeconds(4)) > 0) {
            throw new IllegalArgumentException(
                    "connectionInterval " + connectionInterval + " is not between 7.5 ms and 4 s");
        }
        if (hostScale.isNegative() || outage.isNegative()) {
            throw new IllegalArgumentException(
                    "hostScale " + hostScale + " and outage " + outage + " may not be negative");
        }
        checkShare("lossShare", lossShare);
        checkShare("duplicateShare", duplicateShare);
        checkShare("disconnectShare", disconnectShare);
    }

    /** A healthy link at a connection interval of 30 ms: late, but nothing lost, doubled or cut. */
    public static RadioModel healthy() {
        return new RadioModel(Duration.ofMillis(30), Duration.ofNanos(600_000), 0, 0, 0, Duration.ofSeconds(3));
    }

    /** The same link with other shares of lost and doubled notifications. */
    public RadioModel losing(double newLossShare, double newDuplicateShare) {
        return new RadioModel(connectionInterval, hostScale, newLossShare, newDuplicateShare, disconnectShare, outage);
    }

    /** The same link, cut before a turn with this chance for so long. */
    public RadioModel cutting(double newDisconnectShare, Duration newOutage) {
        return new RadioModel(connectionInterval, hostScale, lossShare, duplicateShare, newDisconnectShare, newOutage);
    }

    /** When a value given to the radio at {@code atNanos} reaches the bus, both since the link's own origin. */
    long deliveryNanos(long atNanos, RandomGenerator random) {
        long interval = connectionInterval.toNanos();
        long event = Math.floorDiv(atNanos + interval - 1, interval) * interval;
        double delay = hostScale.toNanos() * Math.pow(1 - random.nextDouble(), -1 / TAIL_EXPONENT);
        return event + Math.min((long) delay, LONGEST_HOST_DELAY_NANOS);
    }

    private static void checkShare(String name, double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(name + " " + share + " is not between 0 and 1");
        }
    }
}
