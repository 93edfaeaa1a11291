package fermata.daemon.virtualcube;

/**
 * What the virtual cube did so far, to hold a receiver against.
 *
 * @param turnsMade turns of the script that were made
 * @param turnsAnnounced turns that some notification announced as new, lost ones included
 * @param notificationsSent notifications that went onto the bus, doubles not counted
 * @param lostOnPurpose notifications that the radio model swallowed
 * @param sentTwice notifications that went onto the bus a second time
 * @param diedWithLink notifications that waited for their connection event when the link was cut
 * @param cuts how often the link was cut on purpose
 */
public record CubeTruth(
        long turnsMade,
        long turnsAnnounced,
        long notificationsSent,
        long lostOnPurpose,
        long sentTwice,
        long diedWithLink,
        long cuts) {}
