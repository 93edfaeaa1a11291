package fermata.daemon.virtualcube;

import static fermata.daemon.virtualcube.TreeOnBus.onBus;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.freedesktop.dbus.types.Variant;

/**
 * The services and characteristics of the link that lives, and what is read, written and notified there. Without a link
 * there are none; whoever still holds one is told so. Safe for use by many threads: locked by its {@link VirtualBluez}.
 */
final class GattObjects {
    private final VirtualBluez bluez;
    private final Peripheral peripheral;
    private final BluezTemper temper;
    private List<CharacteristicObject> characteristics = List.of();

    GattObjects(VirtualBluez bluez, Peripheral peripheral, BluezTemper temper) {
        this.bluez = bluez;
        this.peripheral = peripheral;
        this.temper = temper;
    }

    /** Puts them on the bus; each time and on each link elsewhere. */
    void export(DeviceObject device, int links) {
        synchronized (bluez) {
            int handle = 0x10 * (links + characteristics.size());
            List<TreeObject> objects = ServiceObject.all(this, peripheral, device.getObjectPath(), handle);
            objects.forEach(object -> onBus(() -> bluez.tree().add(object)));
            characteristics = objects.stream()
                    .filter(CharacteristicObject.class::isInstance)
                    .map(CharacteristicObject.class::cast)
                    .toList();
        }
    }

    /** Takes them off the bus. */
    void remove(DeviceObject device) {
        vanish();
        onBus(() -> bluez.tree().removeBelow(device.getObjectPath()));
    }

    /** They are gone, and nothing on the bus said so. */
    void vanish() {
        synchronized (bluez) {
            characteristics = List.of();
        }
    }

    /** Sends a value; false when nobody is subscribed to it. */
    boolean send(UUID characteristic, byte[] value) {
        synchronized (bluez) {
            Optional<CharacteristicObject> subscribed = subscribed(characteristic);
            subscribed.ifPresent(object -> showValue(object, value));
            return subscribed.isPresent();
        }
    }

    boolean isNotifying(UUID characteristic) {
        synchronized (bluez) {
            return subscribed(characteristic).isPresent();
        }
    }

    private Optional<CharacteristicObject> subscribed(UUID characteristic) {
        return characteristics.stream()
                .filter(each -> each.uuid().equals(characteristic) && each.isNotifying())
                .findFirst();
    }

    byte[] readValue(CharacteristicObject object) {
        synchronized (bluez) {
            bluez.requireLink();
            String failure = temper.nextReadFailure();
            if (!failure.isEmpty()) {
                throw new org.bluez.Error.Failed(failure);
            }
            byte[] value = peripheral.read(object.uuid());
            showValue(object, value);
            return value;
        }
    }

    void writeValue(CharacteristicObject object, byte[] value) {
        synchronized (bluez) {
            bluez.requireLink();
        }
        peripheral.written(object.uuid(), value);
    }

    void startNotify(CharacteristicObject object) {
        synchronized (bluez) {
            bluez.requireLink();
            bluez.change(object, BluezNames.CHARACTERISTIC, "Notifying", true);
            if (temper.takesNotifyingEarly()) {
                showValue(object, peripheral.read(object.uuid()));
            }
        }
        peripheral.subscribed(object.uuid());
    }

    void stopNotify(CharacteristicObject object) {
        synchronized (bluez) {
            bluez.change(object, BluezNames.CHARACTERISTIC, "Notifying", false);
        }
    }

    private void showValue(CharacteristicObject object, byte[] value) {
        onBus(() ->
                bluez.tree().change(object, BluezNames.CHARACTERISTIC, "Value", new Variant<>(value.clone(), "ay")));
    }
}
