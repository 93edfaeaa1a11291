/**
 * What is happening now: the running capture read as its frames are committed, and the evening that is followed on it.
 *
 * <p>{@link fermata.daemon.live.LiveBoard} is the main type. It takes committed items and scrambles from a stock, and
 * gives {@link fermata.daemon.live.LiveMessage}s: the whole state to whoever joins, then what changed. Times are
 * microseconds of the board's monotonic clock; only their differences mean something. Nothing here is stored but marks
 * of scrambles that were done and references that were told; all else is derived again by the analysis.
 */
package fermata.daemon.live;
