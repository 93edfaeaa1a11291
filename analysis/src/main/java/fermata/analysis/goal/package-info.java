/**
 * What a solve builds on its way: sets of pieces at home, however the cube is held, and when they stood.
 *
 * <p>Main types: {@link fermata.analysis.goal.Pieces} and {@link fermata.analysis.goal.PieceSet}, asked of a {@link
 * fermata.analysis.goal.HeldState}; {@link fermata.analysis.goal.PairGrowth}, which takes the states of a solve and
 * gives times: time t is after t turns. Sets are bits; asking costs a few steps. No source: definitions.
 */
package fermata.analysis.goal;
