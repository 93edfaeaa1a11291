/**
 * The central: finds a cube through BlueZ's D-Bus API, connects, subscribes, and keeps at it.
 *
 * <p>Main type: {@link fermata.daemon.bluetooth.BluetoothCapture}. Takes a bus address, a
 * {@link fermata.daemon.bluetooth.CaptureTarget} and a journal; gives frames and link events to the journal. All waits
 * run on the injected clock. Sources: BlueZ 5.87 {@code doc/org.bluez.*.rst} and {@code src/error.h}; the failures
 * handled here are those reported by other users of that interface.
 */
package fermata.daemon.bluetooth;
