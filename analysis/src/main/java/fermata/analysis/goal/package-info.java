/**
 * What can hold in a state: sets of pieces at home, up to a turn or not, however the cube is held.
 *
 * <p>Main types: {@link fermata.analysis.goal.Pieces} and {@link fermata.analysis.goal.PieceSet}, asked of a {@link
 * fermata.analysis.goal.HeldState}. Sets are bits; asking costs a few steps.
 */
package fermata.analysis.goal;
