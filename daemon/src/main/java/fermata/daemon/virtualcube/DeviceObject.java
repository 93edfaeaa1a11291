package fermata.daemon.virtualcube;

import java.util.List;
import java.util.Locale;
import org.bluez.Device1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** The cube as a device on the bus; hands every call to the virtual BlueZ. */
final class DeviceObject extends TreeObject implements Device1 {
    private final VirtualBluez bluez;

    DeviceObject(VirtualBluez bluez, Peripheral peripheral, String adapterPath) {
        super(adapterPath + "/dev_"
                + peripheral.address().toUpperCase(Locale.ROOT).replace(':', '_'));
        this.bluez = bluez;
        List<String> uuids =
                peripheral.services().stream().map(s -> s.uuid().toString()).toList();
        put(BluezNames.DEVICE, "Address", new Variant<>(peripheral.address()));
        put(BluezNames.DEVICE, "AddressType", new Variant<>("random"));
        put(BluezNames.DEVICE, "Name", new Variant<>(peripheral.name()));
        put(BluezNames.DEVICE, "Alias", new Variant<>(peripheral.name()));
        put(BluezNames.DEVICE, "Paired", new Variant<>(false));
        put(BluezNames.DEVICE, "Connected", new Variant<>(false));
        put(BluezNames.DEVICE, "ServicesResolved", new Variant<>(false));
        put(BluezNames.DEVICE, "UUIDs", new Variant<>(uuids, "as"));
        put(BluezNames.DEVICE, "Adapter", new Variant<>(new DBusPath(adapterPath)));
    }

    @Override
    public void Connect() {
        bluez.connect();
    }

    @Override
    public void Disconnect() {
        bluez.disconnect();
    }

    @Override
    public void ConnectProfile(String uuid) {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public void DisconnectProfile(String uuid) {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public void Pair() {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public void CancelPairing() {
        throw new org.bluez.Error.DoesNotExist("Does Not Exist");
    }
}
