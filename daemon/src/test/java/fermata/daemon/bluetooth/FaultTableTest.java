package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.LinkFault;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FaultTableTest {
    private static final Set<String> CALLED = Set.of(
            "StartDiscovery",
            "StopDiscovery",
            "SetDiscoveryFilter",
            "RemoveDevice",
            "Connect",
            "Disconnect",
            "ReadValue",
            "WriteValue",
            "StartNotify");

    // Texts: BlueZ src/error.h; wording of ATT failures: BlueZ src/gatt-client.c; the bus's own names: D-Bus
    // specification.
    @ParameterizedTest
    @CsvSource({
        "org.bluez.Error.Failed, le-connection-abort-by-local, RETRY_FAST",
        "org.bluez.Error.Failed, br-connection-canceled, RETRY_FAST",
        "org.bluez.Error.Failed, le-connection-concurrent-connection-limit, RETRY_SLOW",
        "org.bluez.Error.Failed, le-connection-memory-allocation, RESET_ADAPTER",
        "org.bluez.Error.Failed, le-connection-key-missing, ASK_HUMAN",
        "org.bluez.Error.Failed, le-connection-invalid-arguments, BUG",
        "org.bluez.Error.Failed, Operation failed with ATT error: 0x0f (Insufficient Encryption), ASK_HUMAN",
        "org.bluez.Error.Failed, Operation failed with ATT error: 0x0e, RETRY_FAST",
        "org.bluez.Error.Failed, Blocked through rfkill, ASK_HUMAN",
        "org.bluez.Error.Failed, something nobody has seen, RETRY_SLOW",
        "org.bluez.Error.InProgress, Operation already in progress, RETRY_FAST",
        "org.bluez.Error.NotReady, Resource Not Ready, RETRY_SLOW",
        "org.bluez.Error.NotPermitted, Notify acquired, ASK_HUMAN",
        "org.bluez.Error.InvalidArguments, Invalid arguments in method call, RETRY_SLOW",
        // ATT 0x07 and 0x0d of the cube, as BlueZ hands them on.
        "org.bluez.Error.InvalidArguments, Invalid offset, RETRY_SLOW",
        "org.bluez.Error.InvalidValueLength, Invalid Length, RETRY_SLOW",
        "org.freedesktop.DBus.Error.NoReply, Message recipient disconnected, RETRY_FAST",
        "org.freedesktop.DBus.Error.AccessDenied, Rejected send message, ASK_HUMAN",
        "org.freedesktop.DBus.Error.UnknownMethod, \"Connect\" doesn't exist, RETRY_FAST",
        "org.freedesktop.DBus.Error.UnknownMethod, no such method, BUG",
        "com.example.Error.Unheard, what, RETRY_SLOW"
    })
    void shouldClassifyOnceWhenAnErrorIsKnown(String name, String text, LinkFault expected) {
        assertThat(FaultTable.classify(name, text)).isEqualTo(expected);
    }

    // The closed list of BlueZ src/error.h, without le-connection-unknown, which says nothing.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "invalid-arguments",
                "adapter-not-powered",
                "not-supported",
                "already-connected",
                "bad-socket",
                "memory-allocation",
                "busy",
                "refused",
                "create-socket",
                "timeout",
                "concurrent-connection-limit",
                "abort-by-remote",
                "abort-by-local",
                "link-layer-protocol-error",
                "gatt-browsing",
                "key-missing"
            })
    void shouldHaveARowForEveryConnectionError(String reason) {
        assertThat(FaultTable.isKnown("org.bluez.Error.Failed", "le-connection-" + reason))
                .isTrue();
    }

    @Test
    void shouldHaveARowForEveryErrorThatACalledMethodCanGive() throws IOException {
        // bluez_dbus.csv: BlueZ 5.87 doc/org.bluez.*.rst
        List<String> names = documented().stream()
                .filter(row -> CALLED.stream().anyMatch(method -> row.contains(" " + method + "(")))
                .flatMap(row -> List.of(row.substring(row.lastIndexOf(',') + 1).split(" ")).stream())
                .filter(name -> !name.isBlank() && !name.equals("Failed") && !name.startsWith("BREDR"))
                .distinct()
                .toList();

        assertThat(names).contains("NotReady", "InProgress", "NotPermitted", "InvalidValueLength");
        assertThat(names).allMatch(name -> FaultTable.isKnown("org.bluez.Error." + name, ""));
    }

    private static List<String> documented() throws IOException {
        try (InputStream in = FaultTableTest.class.getResourceAsStream("/fermata/fixtures/reference/bluez_dbus.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
    }
}
