package fermata.daemon.bluetooth;

import fermata.daemon.capture.LinkFault;
import java.util.function.BooleanSupplier;

/** A subscription that ends with a link error, if at all, instead of any exception. */
interface Closing extends AutoCloseable {
    @Override
    void close();

    /** {@code pointless}: there is nobody left who could refuse, a failure then means nothing. */
    static Closing of(AutoCloseable subscription, BooleanSupplier pointless) {
        return () -> {
            if (pointless.getAsBoolean()) {
                // Asking a bus that is gone would wait for its answer.
                return;
            }
            try {
                subscription.close();
            } catch (Exception e) {
                throw new LinkException(
                        LinkFault.RETRY_SLOW, "the bus refuses to end a subscription: " + e.getMessage(), e);
            }
        };
    }
}
