/**
 * Whether this machine's date can be believed.
 *
 * <p>{@link fermata.daemon.civil.MachineCivilClock} is the main type: it reads the machine's clocks and asks what
 * stands behind the date, first the system's own word that the network steers it (systemd's {@code timedate1}, which
 * speaks for every time service), then a clock with a battery. Times are civil instants and nanoseconds of the injected
 * monotonic clock. Source: org.freedesktop.timedate1(5), systemd-timesyncd.service(8), the kernel's
 * Documentation/admin-guide/rtc.rst.
 */
package fermata.daemon.civil;
