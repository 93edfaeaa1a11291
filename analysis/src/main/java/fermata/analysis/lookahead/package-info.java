/**
 * What could be known about the pieces from what was visible, and whether the hand rested all the same.
 *
 * <p>Main types: {@link fermata.analysis.lookahead.LookAhead} gives a finding for each pair or block of a solve; {@link
 * fermata.analysis.lookahead.PieceKnowledge} takes states, holds and turns of one stage in order and gives, for each
 * corner and edge, where it may still be. Microseconds. The model, stated wherever its findings are shown: nothing is
 * remembered from before the stage began, and what was once known is followed through the turns. Which stickers a hand
 * leaves in view is in {@link fermata.analysis.lookahead.View}, common practice, no source.
 */
package fermata.analysis.lookahead;
