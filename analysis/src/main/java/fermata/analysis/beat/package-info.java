/**
 * A solve laid out in time: every beat (the time from one turn to the next) with what the hand did in it and where it
 * stands.
 *
 * <p>Main type: {@link fermata.analysis.beat.Timeline}, of a {@link fermata.analysis.beat.PracticedSolve}. Takes turns,
 * stages and what is known of the hand; gives {@link fermata.analysis.beat.Beat}s in microseconds with their {@link
 * fermata.analysis.beat.Context}. Judges nothing: what a rest is, {@code rhythm} and {@code rest} say.
 */
package fermata.analysis.beat;
