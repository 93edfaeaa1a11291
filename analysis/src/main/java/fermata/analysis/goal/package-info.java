/**
 * What a solve builds on its way, as sets of pieces in the core frame, and when it stood.
 *
 * <p>Main type: {@link fermata.analysis.goal.PairGrowth}. Takes the states of a solve as {@link
 * fermata.analysis.goal.PiecesHome}, gives times: time t is after t turns. No source: definitions. Pure.
 */
package fermata.analysis.goal;
