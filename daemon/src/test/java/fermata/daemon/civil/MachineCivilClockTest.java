package fermata.daemon.civil;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.time.CivilReading;
import fermata.daemon.time.ClockProof;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.PrivateBus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MachineCivilClockTest {
    /** A busy machine may be long about an answer; whether there is one is what is tested. */
    private static final Duration PATIENCE = Duration.ofMinutes(1);

    private static final Instant NOW = Instant.parse("2026-11-24T20:00:00Z");

    @TempDir
    Path directory;

    private final Wall wall = new Wall();
    private final Monotonic clock = new Monotonic();

    /** org.freedesktop.timedate1(5): NTPSynchronized, a readonly b. */
    @Test
    void shouldBelieveTheDateWhenTheSystemSaysThatTheNetworkSteersIt() throws Exception {
        AtomicBoolean steered = new AtomicBoolean();
        AtomicInteger asked = new AtomicInteger();
        try (PrivateBus bus = PrivateBus.start();
                DBusConnection system = DBusConnectionBuilder.forAddress(bus.address())
                        .withShared(false)
                        .build()) {
            system.exportObject(new Timedate(steered, asked));
            system.requestBusName("org.freedesktop.timedate1");
            MachineCivilClock civil =
                    civil(new NetworkTime(bus.address(), Files.createFile(directory.resolve("sync")), PATIENCE));
            assertThat(civil.read().proof())
                    .as("its word counts for more than a file")
                    .isEqualTo(ClockProof.NONE);

            steered.set(true);
            assertThat(civil.read().proof()).isEqualTo(ClockProof.NONE);
            assertThat(asked).as("not asked at each look").hasValue(1);
            pass(Duration.ofSeconds(31));
            assertThat(civil.read().proof()).isEqualTo(ClockProof.NETWORK);

            // Somebody sets the clock by hand: the kernel's flag falls.
            steered.set(false);
            wall.now = wall.now.minus(Duration.ofDays(2));
            assertThat(civil.read().proof()).isEqualTo(ClockProof.NONE);
            // The network sets it right.
            steered.set(true);
            wall.now = wall.now.plus(Duration.ofDays(2));
            assertThat(civil.read().proof()).isEqualTo(ClockProof.NETWORK);
            pass(Duration.ofHours(9));
            assertThat(civil.read().proof()).isEqualTo(ClockProof.NETWORK);
            assertThat(asked).hasValue(4);
        }
    }

    @Test
    void shouldTakeTimesyncsWordWhenNobodyAnswersOnTheBus() throws IOException {
        Path file = directory.resolve("synchronized");
        MachineCivilClock civil = civil(new NetworkTime("unix:path=" + directory.resolve("no-bus"), file, PATIENCE));
        assertThat(civil.read().proof()).isEqualTo(ClockProof.NONE);

        Files.createFile(file);
        pass(Duration.ofSeconds(31));
        assertThat(civil.read().proof()).isEqualTo(ClockProof.NETWORK);
    }

    @Test
    void shouldBelieveADateThatABatteryClockShares() throws IOException {
        NetworkTime nobody =
                new NetworkTime("unix:path=" + directory.resolve("no-bus"), directory.resolve("no-file"), PATIENCE);
        Path since = Files.createDirectories(directory.resolve("rtc/rtc0")).resolve("since_epoch");
        Files.writeString(since, NOW.getEpochSecond() - 7 + "\n");
        assertThat(civil(nobody).read().proof()).isEqualTo(ClockProof.BATTERY);

        // One without a battery begins in 1970; the system then takes the date of its last shutdown.
        Files.writeString(since, "12\n");
        assertThat(civil(nobody).read().proof()).isEqualTo(ClockProof.NONE);
        Files.writeString(since, "no number");
        assertThat(civil(nobody).read().proof()).isEqualTo(ClockProof.NONE);
    }

    @Test
    void shouldNotBelieveADateThatCannotBeWhoeverSaysSo() throws IOException {
        Path file = Files.createFile(directory.resolve("synchronized"));
        for (String wrong : new String[] {"1969-12-31T23:59:59Z", "1970-01-01T00:00:00Z", "2106-02-07T06:28:16Z"}) {
            wall.now = Instant.parse(wrong);
            assertThat(civil(new NetworkTime("unix:path=" + directory.resolve("no-bus"), file, PATIENCE))
                            .read()
                            .proof())
                    .as(wrong)
                    .isEqualTo(ClockProof.NONE);
        }
    }

    @Test
    void shouldCountASleepNeitherAsASettingNorAsMonotonicTime() {
        CivilReading before = new CivilReading(NOW, 1_000, 0, ClockProof.NETWORK);
        CivilReading after = new CivilReading(
                NOW.plus(Duration.ofHours(8)).plusNanos(500),
                1_500,
                Duration.ofHours(8).toNanos(),
                ClockProof.NETWORK);
        assertThat(after.setSince(before)).isZero();
        assertThat(after.at(1_000, 0)).isEqualTo(NOW);
    }

    private void pass(Duration time) {
        clock.nanos += time.toNanos();
        wall.now = wall.now.plus(time);
    }

    private MachineCivilClock civil(NetworkTime network) {
        return new MachineCivilClock(wall, clock, false, network, new BatteryClock(directory.resolve("rtc")));
    }

    private static final class Monotonic implements MonotonicClock {
        private long nanos = 5_000;

        @Override
        public long nanos() {
            return nanos;
        }

        @Override
        public long machineNanos(Duration duration) {
            return duration.toNanos();
        }
    }

    private static final class Wall extends Clock {
        private Instant now = NOW;

        @Override
        public Instant instant() {
            return now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }
    }

    private record Timedate(AtomicBoolean steered, AtomicInteger asked) implements Properties {
        @Override
        public String getObjectPath() {
            return "/org/freedesktop/timedate1";
        }

        @Override
        @SuppressWarnings("unchecked")
        public <A> A Get(String interfaceName, String property) {
            asked.incrementAndGet();
            return (A) new Variant<>(property.equals("NTPSynchronized") && steered.get());
        }

        @Override
        public <A> void Set(String interfaceName, String property, A value) {
            throw new UnsupportedOperationException("read only");
        }

        @Override
        public Map<String, Variant<?>> GetAll(String interfaceName) {
            return Map.of("NTPSynchronized", new Variant<>(steered.get()));
        }
    }
}
