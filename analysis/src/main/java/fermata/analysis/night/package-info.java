/**
 * The numbers of one practice day.
 *
 * <p>Main type: {@link fermata.analysis.night.NightSummary}. Takes the day's solves in the order in which they were
 * made, gives a {@link fermata.analysis.record.NightRecord}; microseconds. Which day a solve belongs to is decided by
 * whoever knows the wall clock.
 */
package fermata.analysis.night;
