/**
 * What really happened on a made-up evening, for tests to hold readings against.
 *
 * <p>Main type: {@link fermata.rehearsal.truth.Evening}: turns in the core frame at microseconds from its beginning,
 * and beside them each attempt, stage, move, rest and regrip. Stands on the decoder only.
 */
package fermata.rehearsal.truth;
