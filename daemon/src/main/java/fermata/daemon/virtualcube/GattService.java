package fermata.daemon.virtualcube;

import java.util.List;
import java.util.UUID;

/**
 * A service that a peripheral offers.
 *
 * @param uuid its UUID
 * @param characteristics what is in it, in handle order
 */
public record GattService(UUID uuid, List<Characteristic> characteristics) {
    public GattService {
        characteristics = List.copyOf(characteristics);
    }

    /**
     * A characteristic.
     *
     * @param uuid its UUID
     * @param flags what can be done with it, in BlueZ's words: {@code read}, {@code write}, {@code notify} ...
     */
    public record Characteristic(UUID uuid, List<String> flags) {
        public Characteristic {
            flags = List.copyOf(flags);
        }
    }
}
