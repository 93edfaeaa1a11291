/**
 * A solve as the hand did it: every turn that was heard, with the move it was part of and the hold before it.
 *
 * <p>Main types: {@link fermata.analysis.hand.HandReader} (infers, from turns, intervals and the solver's habits),
 * {@link fermata.analysis.hand.StatedHand} (what the solver says it was). Probabilities 0..1, times in microseconds.
 * How holds are inferred, and what corrections teach, is {@code analysis.hold}'s.
 */
package fermata.analysis.hand;
