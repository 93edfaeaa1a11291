package fermata.daemon.bluetooth;

import fermata.daemon.capture.LinkFault;
import java.time.Duration;

/**
 * How long to wait after a fault, and when quick retries have been tried often enough. Owned by the central's thread.
 *
 * <p>Nine quick tries a quarter of a second apart are the budget that the best-tried clients of BlueZ settled on; then
 * one reset of the adapter, then ever longer pauses up to a minute. A link that delivered starts the count anew.
 */
final class RetryPolicy {
    private static final int QUICK_TRIES = 9;
    private static final Duration QUICK = Duration.ofMillis(250);
    private static final Duration SLOW_FIRST = Duration.ofSeconds(1);
    private static final Duration SLOW_LONGEST = Duration.ofSeconds(60);
    private static final Duration HUMAN = Duration.ofSeconds(30);

    /** What to do next. */
    record Step(LinkFault fault, Duration pause) {}

    private int quickFailures;
    private int slowFailures;

    /** A link delivered: everything before is forgotten. */
    void succeeded() {
        quickFailures = 0;
        slowFailures = 0;
    }

    /** The step after one more fault. */
    Step after(LinkFault fault) {
        return switch (fault) {
            case RETRY_FAST -> afterQuick();
            case RETRY_SLOW -> new Step(LinkFault.RETRY_SLOW, nextSlow());
            case RESET_ADAPTER -> new Step(LinkFault.RESET_ADAPTER, nextSlow());
            case ASK_HUMAN -> new Step(LinkFault.ASK_HUMAN, HUMAN);
            case BUG -> new Step(LinkFault.BUG, nextSlow());
        };
    }

    private Step afterQuick() {
        quickFailures++;
        if (quickFailures < QUICK_TRIES) {
            return new Step(LinkFault.RETRY_FAST, QUICK);
        }
        LinkFault ladder = quickFailures == QUICK_TRIES ? LinkFault.RESET_ADAPTER : LinkFault.RETRY_SLOW;
        return new Step(ladder, nextSlow());
    }

    private Duration nextSlow() {
        Duration pause = SLOW_FIRST.multipliedBy(1L << Math.min(slowFailures, 6));
        slowFailures++;
        return pause.compareTo(SLOW_LONGEST) < 0 ? pause : SLOW_LONGEST;
    }
}
