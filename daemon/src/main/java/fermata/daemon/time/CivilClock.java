package fermata.daemon.time;

/** Tells civil time, and whether it is known to be right. May ask the system: not for a signal's handler. */
@FunctionalInterface
public interface CivilClock {
    /** Both clocks now. */
    CivilReading read();
}
