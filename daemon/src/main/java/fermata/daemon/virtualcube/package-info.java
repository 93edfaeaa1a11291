/**
 * A cube that is not there: a private D-Bus bus with an {@code org.bluez} object tree on it and a peripheral that
 * plays a script.
 *
 * <p>Main type: {@link fermata.daemon.virtualcube.VirtualCube}. Takes {@link fermata.daemon.virtualcube.ScriptedTurn}s
 * (core frame, microseconds of device time) and gives what a real BlueZ would put on the bus, with a radio's batching,
 * jitter and, by seed, losses. It counts what it did ({@link fermata.daemon.virtualcube.CubeTruth}), so that a
 * receiver can be held against it. Source of the behaviour: BlueZ 5.87 {@code doc/org.bluez.*.rst} and what BlueZ 5.66
 * showed on two emulated controllers.
 */
package fermata.daemon.virtualcube;
