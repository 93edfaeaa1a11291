/**
 * The numbers of one practice day, or of many.
 *
 * <p>Main type: {@link fermata.analysis.night.NightLedger}. Takes the accounts of attempts in the order in which they
 * were made, gives a {@link fermata.analysis.night.NightReport}; microseconds. Which day an attempt belongs to is
 * decided by whoever knows the wall clock.
 */
package fermata.analysis.night;
