package fermata.daemon.virtualcube;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

    /** The services and characteristics of a peripheral in the order of their handles, from {@code firstHandle} on. */
    static List<TreeObject> all(GattObjects gatt, Peripheral peripheral, String devicePath, int firstHandle) {
        List<TreeObject> all = new ArrayList<>();
        int handle = firstHandle;
        for (GattService service : peripheral.services()) {
            String servicePath = devicePath + String.format(Locale.ROOT, "/service%04x", handle++);
            all.add(new ServiceObject(servicePath, service, devicePath));
            for (GattService.Characteristic each : service.characteristics()) {
                String path = servicePath + String.format(Locale.ROOT, "/char%04x", handle++);
                all.add(new CharacteristicObject(gatt, path, each, servicePath));
            }
        }
        return all;
    }
}
