package fermata.daemon.demo;

import java.time.Clock;
import java.util.Objects;

/**
 * What the demo shall do.
 *
 * @param solves how many attempts end solved
 * @param seed decides the evening and the radio
 * @param speed times real time
 * @param clock civil time and the local zone
 */
public record DemoPlan(int solves, long seed, double speed, Clock clock) {
    /** The most solves that the demo takes: an evening of twelve hours. */
    public static final int MOST_SOLVES = 500;

    public DemoPlan {
        Objects.requireNonNull(clock, "clock");
        if (solves < 1 || solves > MOST_SOLVES) {
            throw new IllegalArgumentException("solves " + solves + " is not in 1.." + MOST_SOLVES);
        }
        if (!(speed >= 1 && speed <= 1000)) {
            throw new IllegalArgumentException("speed " + speed + " is not in 1..1000 times real time");
        }
    }
}
