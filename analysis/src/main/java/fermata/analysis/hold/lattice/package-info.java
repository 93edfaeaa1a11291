/**
 * All readings of a stream at once: the chain over 24 holds, its weights and what they sum to.
 *
 * <p>Main type: {@link fermata.analysis.hold.lattice.HoldInference}. Takes a {@link
 * fermata.analysis.hold.HoldQuestion}, gives a {@link fermata.analysis.hold.HoldReading} with probabilities. A
 * conditional random field (Lafferty, McCallum, Pereira 2001), decoded by forward-backward; cost linear in turns.
 */
package fermata.analysis.hold.lattice;
