/**
 * Time as the daemon sees it, always handed in and never asked for behind the caller's back.
 *
 * <p>{@link fermata.daemon.time.MonotonicClock} (nanoseconds, never stepped) orders everything that is captured and
 * drives every wait, time-out and back-off, so that a demo at several times real time changes no logic; a
 * {@link fermata.daemon.time.PacedClock} stands still where the machine does not keep up, and a
 * {@link fermata.daemon.time.Deadline} on the machine's own clock bounds waits for what runs by no clock of ours.
 * Civil time comes in as a {@link java.time.Clock} and only labels a capture: boards without a battery clock jump by
 * hours once the network sets the time.
 */
package fermata.daemon.time;
