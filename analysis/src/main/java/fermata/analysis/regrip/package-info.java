/**
 * Where a hand takes hold anew to make the next turn.
 *
 * <p>Main type: {@link fermata.analysis.regrip.Regrips}, which takes {@link fermata.analysis.regrip.GripTurn}s (what
 * the hand made, with its doubts, and what the interval before it says) and gives a
 * {@link fermata.analysis.regrip.RegripReading}: a probability for each transition and an expected count with its
 * interval. Inference is forward-backward (Rabiner 1989, section III) over where the fingers were left. What fingers
 * can do is common practice, no source: {@link fermata.analysis.regrip.Kinematics} is the whole of it. No public solve
 * notes regrips, so nothing here has been held against a truth.
 */
package fermata.analysis.regrip;
