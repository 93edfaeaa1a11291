/**
 * What a practice day asked of the hand: turns, regrips, minutes, and when a break may be welcome.
 *
 * <p>Main type: {@link fermata.analysis.load.LoadLedger}. Takes attempts in the order in which they were made.
 * No count of turns or minutes is known to be safe or harmful (Health Council of the Netherlands 2013, 2013/05E;
 * Cochrane CD012886.pub2, 2019): reminders are comfort advice only.
 */
package fermata.analysis.load;
