package fermata.daemon.bluetooth;

import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A subscription that can be ended without fear: whatever the bus says to it, it is over. */
interface Subscription extends AutoCloseable {
    @Override
    void close();

    /**
     * A subscription whose end may be refused. A bus drops the match rules for a sender itself when that sender goes,
     * and then refuses to drop them once more: that is the usual end after the Bluetooth service died, not a fault.
     *
     * @param pointless whether nobody is there to be told; asking then would wait for an answer
     */
    static Subscription of(AutoCloseable subscription, BooleanSupplier pointless) {
        return () -> {
            if (pointless.getAsBoolean()) {
                return;
            }
            try {
                subscription.close();
            } catch (Exception e) {
                Logger log = LoggerFactory.getLogger(Subscription.class);
                log.debug("the bus did not end a subscription: {}", e.getMessage());
            }
        };
    }
}
