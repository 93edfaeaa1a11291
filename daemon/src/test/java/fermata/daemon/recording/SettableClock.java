package fermata.daemon.recording;

import fermata.daemon.time.CivilClock;
import fermata.daemon.time.CivilReading;
import fermata.daemon.time.ClockProof;
import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.time.Instant;

/** A civil clock that runs with a monotonic one and is set when a test says so. */
public final class SettableClock implements CivilClock {
    private final MonotonicClock clock;
    private Instant wall;
    private long setNanos;
    private long asleepNanos;
    private ClockProof proof = ClockProof.NONE;

    public SettableClock(MonotonicClock clock, Instant wall) {
        this.clock = clock;
        set(wall, ClockProof.NONE);
    }

    /** Sets it, as the network or a person does. */
    public synchronized void set(Instant newWall, ClockProof newProof) {
        wall = newWall;
        setNanos = clock.nanos();
        proof = newProof;
    }

    /** The machine sleeps: civil time goes on. */
    public synchronized void sleep(Duration length) {
        wall = wall.plus(length);
        asleepNanos += length.toNanos();
    }

    @Override
    public synchronized CivilReading read() {
        long nanos = clock.nanos();
        return new CivilReading(wall.plusNanos(nanos - setNanos), nanos, asleepNanos, proof);
    }
}
