package fermata.daemon.virtualcube;

import org.bluez.GattService1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** A service on the bus. */
final class ServiceObject extends TreeObject implements GattService1 {
    ServiceObject(String path, GattService service, String devicePath) {
        super(path);
        put(BluezNames.GATT_SERVICE, "UUID", new Variant<>(service.uuid().toString()));
        put(BluezNames.GATT_SERVICE, "Primary", new Variant<>(true));
        put(BluezNames.GATT_SERVICE, "Device", new Variant<>(new DBusPath(devicePath)));
    }
}
