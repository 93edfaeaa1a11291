/**
 * The virtual cuber: made-up one-handed solvers whose evenings feed tests and the demo, with the truth beside the
 * stream.
 *
 * <p>Main type: {@link fermata.rehearsal.VirtualCuber}. Takes a style, a seeded generator and a plan; gives
 * an {@link fermata.rehearsal.truth.Evening} of core-frame turns in microseconds from a solved cube, and what
 * every turn, stage, rest, regrip and rotation really was. Knows the decoder only, so that nothing it tells is a
 * guess of the analysis. The model of times is our own, within what common practice says of one-handed solving; it
 * has no measured source.
 */
package fermata.rehearsal;
