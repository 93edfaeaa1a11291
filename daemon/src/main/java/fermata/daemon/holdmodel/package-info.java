/**
 * Which holds are read with what: the learned model by name, learning it anew, and trials of it on reconstructions.
 *
 * <p>Main types: {@link fermata.daemon.holdmodel.HoldFiles} (what comes along, and its id), {@link
 * fermata.daemon.holdmodel.HoldTrials} (assesses, cross-validates). How a hold is inferred is the analysis' affair.
 */
package fermata.daemon.holdmodel;
