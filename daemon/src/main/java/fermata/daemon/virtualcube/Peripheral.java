package fermata.daemon.virtualcube;

import java.util.List;
import java.util.UUID;

/** The far end of the virtual link. Methods are called by the bus's threads and must not block. */
public interface Peripheral {
    /** Its address, as {@code XX:XX:XX:XX:XX:XX}. */
    String address();

    /** The name it advertises. */
    String name();

    /** What it offers. */
    List<GattService> services();

    /** The present value of a characteristic. */
    byte[] read(UUID characteristic);

    /** Somebody wrote to a characteristic. */
    default void written(UUID characteristic, byte[] value) {}

    /** Somebody subscribed to a characteristic on a fresh link. */
    default void subscribed(UUID characteristic) {}
}
