package fermata.daemon.virtualcube;

/** The names that BlueZ gives its things on the bus. Source: BlueZ {@code doc/org.bluez.*.rst}. */
final class BluezNames {
    static final String SERVICE = "org.bluez";
    static final String ADAPTER = "org.bluez.Adapter1";
    static final String DEVICE = "org.bluez.Device1";
    static final String GATT_SERVICE = "org.bluez.GattService1";
    static final String CHARACTERISTIC = "org.bluez.GattCharacteristic1";
    static final String ADAPTER_PATH = "/org/bluez/hci";

    private BluezNames() {}
}
