/**
 * Device clocks on the board's clock: counters unwrapped, a line under the arrivals, and what to do where no clock is.
 *
 * <p>Main type: {@link fermata.decoder.clock.TurnClock}. Takes pairs of device and arrival time, gives a
 * {@link fermata.decoder.clock.ClockFit}. Microseconds; skew in parts per million. A notification can be late and never
 * early, so the line lies under the points: lower convex hull (Moon, Skelly and Towsley 1999, "Estimation and removal
 * of clock skew from network delay measurements"; Zhang, Liu and Xia 2002, "Clock synchronization algorithms for
 * network measurements").
 */
package fermata.decoder.clock;
