/**
 * What the hand did, inferred from what the centres felt: holds, rotations, wide turns and slices.
 *
 * <p>Here are the words: a {@link fermata.analysis.hold.HoldTrack}, a question, a reading, the evidence beside the
 * turns. {@link fermata.analysis.hold.lattice.HoldInference} answers. It takes core-frame turns, with the intervals
 * between them in microseconds where known, and gives for each turn the hand's move and the hold with a probability,
 * and the rotations between. A log-linear chain over holds (Lafferty, McCallum, Pereira 2001, conditional random
 * fields), decoded by forward-backward and Viterbi; its weights are learned from public reconstructions.
 */
package fermata.analysis.hold;
