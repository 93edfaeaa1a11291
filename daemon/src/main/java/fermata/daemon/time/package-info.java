/**
 * Time as the daemon sees it, always handed in and never asked for behind the caller's back.
 *
 * <p>{@link fermata.daemon.time.MonotonicClock} (nanoseconds, never stepped) orders everything that is captured and
 * drives every wait, time-out and back-off, so that a demo at several times real time changes no logic.
 * {@link fermata.daemon.time.WallClock} (milliseconds since 1970) only labels a capture: boards without a battery clock
 * jump by hours once the network sets the time.
 */
package fermata.daemon.time;
