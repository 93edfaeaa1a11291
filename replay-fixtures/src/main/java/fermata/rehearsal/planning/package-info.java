/**
 * What a virtual cuber turns: a cross, pairs and a last layer, planned as one hand would write them.
 *
 * <p>Main type: {@link fermata.rehearsal.planning.SolvePlanner}. Takes a state and habits, gives a {@link
 * fermata.rehearsal.planning.PlannedSolve} of moves in the hand frame, without times. Searches with the tables of
 * {@code decoder.search}.
 */
package fermata.rehearsal.planning;
