/**
 * What the hand did, inferred from what the centres felt: holds, rotations, wide turns and slices.
 *
 * <p>Main type: {@link fermata.analysis.hold.HoldInference}. Takes core-frame turns, with the intervals between
 * them in microseconds where known, and gives for each turn the hand's move and the hold with a probability,
 * and the rotations between. A log-linear chain over holds (Lafferty, McCallum, Pereira 2001, conditional
 * random fields), decoded by forward-backward and Viterbi; its weights are learned from public reconstructions.
 */
package fermata.analysis.hold;
