package fermata.daemon.virtualcube;

import java.util.Map;
import org.bluez.Adapter1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** The adapter on the bus; hands every call to the virtual BlueZ. */
final class AdapterObject extends TreeObject implements Adapter1 {
    private final VirtualBluez bluez;

    AdapterObject(VirtualBluez bluez, String path) {
        super(path);
        this.bluez = bluez;
        put(BluezNames.ADAPTER, "Address", new Variant<>("02:00:00:00:00:01"));
        put(BluezNames.ADAPTER, "Name", new Variant<>("virtual"));
        put(BluezNames.ADAPTER, "Powered", new Variant<>(true));
        put(BluezNames.ADAPTER, "Discovering", new Variant<>(false));
    }

    @Override
    public void StartDiscovery() {
        bluez.startDiscovery();
    }

    @Override
    public void StopDiscovery() {
        bluez.stopDiscovery();
    }

    @Override
    public void RemoveDevice(DBusPath device) {
        bluez.forget(device.getPath());
    }

    @Override
    public void SetDiscoveryFilter(Map<String, Variant<?>> filter) {
        bluez.setDiscoveryFilter(filter);
    }

    @Override
    public String[] GetDiscoveryFilters() {
        return new String[] {"UUIDs", "RSSI", "Transport", "DuplicateData", "Pattern"};
    }

    @Override
    public DBusPath ConnectDevice(Map<String, Variant<?>> properties) {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public <A> void Set(String interfaceName, String property, A value) {
        if (!property.equals("Powered")) {
            super.Set(interfaceName, property, value);
        }
        Object bare = value instanceof Variant<?> variant ? variant.getValue() : value;
        bluez.setPowered(Boolean.TRUE.equals(bare));
    }
}
