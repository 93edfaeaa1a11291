/**
 * Averages as the WCA Regulations have them, and plain ones.
 *
 * <p>Main type: {@link fermata.analysis.average.Averages}. Takes results in the order in which they were made, in
 * microseconds; gives results. Source: WCA Regulations 9f1, 9f2, 9f8 to 9f11.
 */
package fermata.analysis.average;
