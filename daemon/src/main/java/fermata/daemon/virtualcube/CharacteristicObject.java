package fermata.daemon.virtualcube;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bluez.GattCharacteristic1;
import org.bluez.datatypes.TwoTuple;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.FileDescriptor;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.Variant;

/** A characteristic on the bus; hands every call on. */
final class CharacteristicObject extends TreeObject implements GattCharacteristic1 {
    /** What the exchange on a link with data length extension comes to, as a rule. */
    private static final int MTU_BYTES = 247;

    private final GattObjects gatt;
    private final UUID uuid;
    private final List<String> flags;

    CharacteristicObject(GattObjects gatt, String path, GattService.Characteristic characteristic, String servicePath) {
        super(path);
        this.gatt = gatt;
        this.uuid = characteristic.uuid();
        this.flags = characteristic.flags();
        put(BluezNames.CHARACTERISTIC, "UUID", new Variant<>(uuid.toString()));
        put(BluezNames.CHARACTERISTIC, "Service", new Variant<>(new DBusPath(servicePath)));
        put(BluezNames.CHARACTERISTIC, "Value", new Variant<>(new byte[0], "ay"));
        put(BluezNames.CHARACTERISTIC, "Notifying", new Variant<>(false));
        put(BluezNames.CHARACTERISTIC, "MTU", new Variant<>(new UInt16(MTU_BYTES)));
        put(BluezNames.CHARACTERISTIC, "Flags", new Variant<>(flags, "as"));
    }

    UUID uuid() {
        return uuid;
    }

    boolean isNotifying() {
        return isTrue(BluezNames.CHARACTERISTIC, "Notifying");
    }

    @Override
    public byte[] ReadValue(Map<String, Variant<?>> options) {
        require("read");
        return gatt.readValue(this);
    }

    @Override
    public void WriteValue(byte[] value, Map<String, Variant<?>> options) {
        require("write");
        gatt.writeValue(this, value);
    }

    @Override
    public void StartNotify() {
        require("notify");
        gatt.startNotify(this);
    }

    @Override
    public void StopNotify() {
        gatt.stopNotify(this);
    }

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireWrite(Map<String, Variant<?>> options) {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public TwoTuple<FileDescriptor, UInt16> AcquireNotify(Map<String, Variant<?>> options) {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    @Override
    public void Confirm() {
        throw new org.bluez.Error.NotSupported("Not Supported");
    }

    private void require(String flag) {
        if (flags.stream().noneMatch(each -> each.startsWith(flag))) {
            throw new org.bluez.Error.NotSupported("Operation is not supported");
        }
    }
}
