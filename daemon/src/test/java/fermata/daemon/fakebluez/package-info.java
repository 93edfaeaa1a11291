/**
 * An {@code org.bluez} that can answer anything with anything: written message by message on a private bus, apart from
 * the virtual cube's own BlueZ, so that not both sides of the tests are the same idea of it.
 *
 * <p>Main type: {@link fermata.daemon.fakebluez.BluezScript}, which plays troubles by a seed against a capture and says
 * what was lost, doubled or late. Source of the shapes and errors: BlueZ 5.87 {@code doc/org.bluez.*.rst}, {@code
 * src/error.h} and {@code src/gatt-client.c}. All waits run on the injected clock.
 */
package fermata.daemon.fakebluez;
