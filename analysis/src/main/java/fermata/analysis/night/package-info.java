/**
 * The numbers of one practice day, or of many.
 *
 * <p>Main type: {@link fermata.analysis.night.NightLedger}. Takes the accounts of attempts in the order in which they
 * were made, gives a {@link fermata.analysis.night.NightReport}; microseconds. Which day an attempt belongs to is
 * decided by whoever knows the wall clock. {@link fermata.analysis.night.Averages} are those of WCA Regulations 9f1,
 * 9f2 and 9f8 to 9f11; {@link fermata.analysis.night.Trend} follows Sen 1968.
 */
package fermata.analysis.night;
