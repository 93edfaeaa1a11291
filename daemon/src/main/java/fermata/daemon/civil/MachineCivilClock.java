package fermata.daemon.civil;

import fermata.daemon.time.CivilClock;
import fermata.daemon.time.CivilReading;
import fermata.daemon.time.ClockProof;
import fermata.daemon.time.MonotonicClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * This machine's clocks. What stands behind the date is asked when the clock was set, and every half minute until
 * something does: an answer costs the system a small process. Not thread-safe.
 */
public final class MachineCivilClock implements CivilClock {
    /** Since when the program exists: a date before it is that of a clock that nobody has set. */
    private static final Instant EARLIEST = Instant.parse("2026-01-01T00:00:00Z");
    /** Clocks of 32 bits that went wrong say 2106. */
    private static final Instant LATEST = Instant.parse("2100-01-01T00:00:00Z");

    private static final Duration SET = Duration.ofSeconds(1);
    private static final long ASK_AGAIN_NANOS = TimeUnit.SECONDS.toNanos(30);
    private static final Path UPTIME = Path.of("/proc/uptime");

    private final Clock wall;
    private final MonotonicClock clock;
    private final MonotonicClock machine = MonotonicClock.system();
    private final boolean isTrusted;
    private final NetworkTime network;
    private final BatteryClock battery;
    private Optional<CivilReading> asked = Optional.empty();

    MachineCivilClock(Clock wall, MonotonicClock clock, boolean isTrusted, NetworkTime network, BatteryClock battery) {
        this.wall = wall;
        this.clock = clock;
        this.isTrusted = isTrusted;
        this.network = network;
        this.battery = battery;
    }

    /**
     * The clocks of this machine.
     *
     * @param wall civil time
     * @param clock what the capture runs by
     * @param isTrusted whether somebody said that the date is right, whatever else says
     */
    public static MachineCivilClock of(Clock wall, MonotonicClock clock, boolean isTrusted) {
        return new MachineCivilClock(wall, clock, isTrusted, NetworkTime.ofSystem(), BatteryClock.ofSystem());
    }

    @Override
    public CivilReading read() {
        long asleep = asleepNanos();
        long nanos = clock.nanos();
        CivilReading now = new CivilReading(wall.instant(), nanos, asleep, ClockProof.NONE);
        if (asked.isEmpty() || isStale(asked.get(), now)) {
            asked = Optional.of(with(now, proof(now.wall())));
        }
        return with(now, asked.get().proof());
    }

    private static boolean isStale(CivilReading last, CivilReading now) {
        return now.setSince(last).compareTo(SET) > 0
                || !last.isKnown() && now.atNanos() - last.atNanos() > ASK_AGAIN_NANOS;
    }

    private static CivilReading with(CivilReading reading, ClockProof proof) {
        return new CivilReading(reading.wall(), reading.atNanos(), reading.asleepNanos(), proof);
    }

    private ClockProof proof(Instant now) {
        if (isTrusted) {
            return ClockProof.PERSON;
        }
        if (now.isBefore(EARLIEST) || !now.isBefore(LATEST)) {
            return ClockProof.NONE;
        }
        if (network.isSteering()) {
            return ClockProof.NETWORK;
        }
        return battery.agrees(now) ? ClockProof.BATTERY : ClockProof.NONE;
    }

    /** The uptime counts sleep, the monotonic clock does not: proc_uptime(5), clock_gettime(2). */
    private long asleepNanos() {
        try {
            String uptime = Files.readString(UPTIME);
            double seconds = Double.parseDouble(uptime.substring(0, uptime.indexOf(' ')));
            return (long) (seconds * TimeUnit.SECONDS.toNanos(1)) - machine.nanos();
        } catch (IOException | RuntimeException notLinux) {
            return 0;
        }
    }
}
