package fermata.daemon.bluetooth;

import static fermata.daemon.capture.LinkFault.ASK_HUMAN;
import static fermata.daemon.capture.LinkFault.BUG;
import static fermata.daemon.capture.LinkFault.RESET_ADAPTER;
import static fermata.daemon.capture.LinkFault.RETRY_FAST;
import static fermata.daemon.capture.LinkFault.RETRY_SLOW;

import fermata.daemon.capture.LinkFault;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The one place where an error of D-Bus or BlueZ is judged. The first row whose name and text both fit decides.
 *
 * <p>Sources: BlueZ {@code src/error.c} (names) and {@code src/error.h} (texts), BlueZ {@code src/shared/att-types.h}
 * (ATT codes), D-Bus specification (names of the bus's own errors). What is in no row is retried slowly: unknown is
 * not hopeless. So is what has the wrong shape, and what nobody foresaw: no answer ends a capture.
 */
final class FaultTable {
    private record Row(String name, String text, LinkFault fault) {}

    private static final String FAILED = "org.bluez.Error.Failed";
    private static final String ATT = "att error: 0x";

    private static final List<Row> ROWS = List.of(
            new Row("", "rfkill", ASK_HUMAN),
            new Row("", "key-missing", ASK_HUMAN),
            new Row(FAILED, "abort-by-local", RETRY_FAST),
            new Row(FAILED, "abort-by-remote", RETRY_FAST),
            new Row(FAILED, "le-connection-timeout", RETRY_FAST),
            new Row(FAILED, "le-connection-busy", RETRY_FAST),
            new Row(FAILED, "link-layer-protocol-error", RETRY_FAST),
            new Row(FAILED, "gatt-browsing", RETRY_FAST),
            new Row(FAILED, "already-connected", RETRY_FAST),
            new Row(FAILED, "connection-canceled", RETRY_FAST),
            new Row(FAILED, "software caused connection abort", RETRY_FAST),
            new Row(FAILED, "not connected", RETRY_FAST),
            new Row(FAILED, "memory-allocation", RESET_ADAPTER),
            new Row(FAILED, "bad-socket", RESET_ADAPTER),
            new Row(FAILED, "create-socket", RESET_ADAPTER),
            new Row(FAILED, "concurrent-connection-limit", RETRY_SLOW),
            new Row(FAILED, "connection-refused", RETRY_SLOW),
            new Row(FAILED, "adapter-not-powered", RETRY_SLOW),
            new Row(FAILED, "connection-not-supported", ASK_HUMAN),
            new Row(FAILED, "invalid-arguments", BUG),
            // Read or write not permitted, not supported: the profile asks for what this device does not do.
            new Row(FAILED, ATT + "02", ASK_HUMAN),
            new Row(FAILED, ATT + "03", ASK_HUMAN),
            new Row(FAILED, ATT + "06", ASK_HUMAN),
            // Authentication, authorization, key size, encryption: it wants a bond.
            new Row(FAILED, ATT + "05", ASK_HUMAN),
            new Row(FAILED, ATT + "08", ASK_HUMAN),
            new Row(FAILED, ATT + "0c", ASK_HUMAN),
            new Row(FAILED, ATT + "0f", ASK_HUMAN),
            new Row(FAILED, ATT, RETRY_FAST),
            new Row("org.bluez.Error.InProgress", "", RETRY_FAST),
            new Row("org.bluez.Error.NotConnected", "", RETRY_FAST),
            new Row("org.bluez.Error.AlreadyConnected", "", RETRY_FAST),
            new Row("org.bluez.Error.DoesNotExist", "", RETRY_FAST),
            new Row("org.bluez.Error.NotReady", "", RETRY_SLOW),
            new Row("org.bluez.Error.NotAvailable", "", RETRY_SLOW),
            // Somebody else holds the notifications, or a second capture runs.
            new Row("org.bluez.Error.NotPermitted", "", ASK_HUMAN),
            new Row("org.bluez.Error.NotAuthorized", "", ASK_HUMAN),
            new Row("org.bluez.Error.NotSupported", "", ASK_HUMAN),
            // What a cube refuses with ATT 0x07 and 0x0d comes as InvalidArguments and InvalidValueLength (BlueZ
            // src/gatt-client.c), so that these names say nothing of whose mistake it was.
            new Row("org.bluez.Error.Invalid", "", RETRY_SLOW),
            new Row("org.bluez.Error.ImproperlyConfigured", "", RETRY_SLOW),
            new Row("org.freedesktop.DBus.Error.NoReply", "", RETRY_FAST),
            new Row("org.freedesktop.DBus.Error.Timeout", "", RETRY_FAST),
            new Row("org.freedesktop.DBus.Error.Disconnected", "", RETRY_FAST),
            // An object that went between two calls.
            new Row("org.freedesktop.DBus.Error.UnknownObject", "", RETRY_FAST),
            new Row("org.freedesktop.DBus.Error.UnknownMethod", "doesn't exist", RETRY_FAST),
            new Row("org.freedesktop.DBus.Error.ServiceUnknown", "", RETRY_SLOW),
            new Row("org.freedesktop.DBus.Error.NameHasNoOwner", "", RETRY_SLOW),
            new Row("org.freedesktop.DBus.Error.AccessDenied", "", ASK_HUMAN),
            new Row("org.freedesktop.DBus.Error.UnknownMethod", "", BUG),
            new Row("org.freedesktop.DBus.Error.UnknownProperty", "", BUG),
            new Row("org.freedesktop.DBus.Error.Invalid", "", BUG));

    private FaultTable() {}

    /**
     * What to do about an error.
     *
     * @param name the D-Bus error's name
     * @param text its text
     */
    static LinkFault classify(String name, String text) {
        return row(name, text).map(Row::fault).orElse(RETRY_SLOW);
    }

    /** The fault of a service or a cube that says what cannot be read, about something that we need. */
    static LinkException odd(String what) {
        return new LinkException(RETRY_SLOW, what + ", which cannot be read");
    }

    /** The fault of whatever nobody foresaw: a mistake in this program, which must not cost the evening. */
    static LinkException unforeseen(RuntimeException e) {
        return new LinkException(BUG, "fermata did not expect this, and tries again: " + e, e);
    }

    /** Whether some row was written for the error. */
    static boolean isKnown(String name, String text) {
        return row(name, text).isPresent();
    }

    private static Optional<Row> row(String name, String text) {
        String lowerText = text.toLowerCase(Locale.ROOT);
        // A service built on the same D-Bus library names the bus's own errors after the library's classes.
        String busName = name.replace("org.freedesktop.dbus.errors.", "org.freedesktop.DBus.Error.");
        return ROWS.stream()
                .filter(row -> busName.startsWith(row.name()) && lowerText.contains(row.text()))
                .findFirst();
    }
}
