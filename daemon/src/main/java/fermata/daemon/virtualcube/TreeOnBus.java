package fermata.daemon.virtualcube;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;

/**
 * The object tree as one life of the service shows it on the bus: a connection, a name, objects and their signals.
 *
 * <p>Guards itself. After {@link #close()} every change is silent, as with a process that died.
 */
final class TreeOnBus implements ObjectManager, AutoCloseable {
    private static final String ROOT = "/";

    private final DBusConnection bus;
    private final Map<String, TreeObject> objects = new LinkedHashMap<>();
    private boolean closed;

    TreeOnBus(String address) throws DBusException {
        bus = DBusConnectionBuilder.forAddress(address).withShared(false).build();
        bus.exportObject(ROOT, this);
    }

    /** Something said on the bus. */
    interface BusAction {
        void run() throws DBusException;
    }

    /** Says it; a virtual service that cannot speak is of no use to anybody. */
    static void onBus(BusAction action) {
        try {
            action.run();
        } catch (DBusException e) {
            throw new IllegalStateException("the virtual BlueZ cannot speak on its bus: " + e.getMessage(), e);
        }
    }

    /** Takes the service's name; from here on clients see the tree. */
    void publish() throws DBusException {
        bus.requestBusName(BluezNames.SERVICE);
    }

    @Override
    public String getObjectPath() {
        return ROOT;
    }

    @Override
    public synchronized Map<DBusPath, Map<String, Map<String, Variant<?>>>> GetManagedObjects() {
        Map<DBusPath, Map<String, Map<String, Variant<?>>>> all = new LinkedHashMap<>();
        objects.forEach((path, object) -> all.put(new DBusPath(path), object.everything()));
        return all;
    }

    synchronized void add(TreeObject object) throws DBusException {
        if (closed || objects.putIfAbsent(object.getObjectPath(), object) != null) {
            return;
        }
        bus.exportObject(object.getObjectPath(), object);
        bus.sendMessage(new InterfacesAdded(ROOT, new DBusPath(object.getObjectPath()), object.everything()));
    }

    /** Removes the object and those below it, leaves first. */
    synchronized void remove(String path) throws DBusException {
        removeBelow(path);
        removeThat(path);
    }

    /** Removes the objects below it, leaves first. */
    synchronized void removeBelow(String path) throws DBusException {
        List<String> gone = new ArrayList<>(objects.keySet());
        gone.removeIf(each -> !each.startsWith(path + "/"));
        gone.sort((a, b) -> b.compareTo(a));
        for (String each : gone) {
            removeThat(each);
        }
    }

    private void removeThat(String path) throws DBusException {
        TreeObject object = objects.remove(path);
        if (object != null && !closed) {
            bus.unExportObject(path);
            announceRemoval(path, List.copyOf(object.everything().keySet()));
        }
    }

    /** Says that interfaces went, whether they were there or not. */
    synchronized void announceRemoval(String path, List<String> interfaces) throws DBusException {
        if (!closed) {
            bus.sendMessage(new InterfacesRemoved(ROOT, new DBusPath(path), interfaces));
        }
    }

    /** Changes a property and says so, changed or not: BlueZ repeats a characteristic's value. */
    synchronized void change(TreeObject object, String interfaceName, String property, Variant<?> value)
            throws DBusException {
        object.put(interfaceName, property, value);
        if (!closed && objects.get(object.getObjectPath()) == object) {
            bus.sendMessage(new Properties.PropertiesChanged(
                    object.getObjectPath(), interfaceName, Map.of(property, value), List.of()));
        }
    }

    /** Takes a property away and says so. */
    synchronized void drop(TreeObject object, String interfaceName, String property) throws DBusException {
        object.take(interfaceName, property);
        if (!closed && objects.get(object.getObjectPath()) == object) {
            bus.sendMessage(new Properties.PropertiesChanged(
                    object.getObjectPath(), interfaceName, Map.of(), List.of(property)));
        }
    }

    /** Hold no lock here that a call from the bus may wait for: the connection waits for such calls to end. */
    @Override
    public void close() {
        synchronized (this) {
            if (closed) {
                return;
            }
            closed = true;
        }
        bus.disconnect();
    }
}
