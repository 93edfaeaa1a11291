/**
 * Written moves: reading, writing and turning them into what the centres feel.
 *
 * <p>Main type: {@link fermata.decoder.notation.Sequence}. Takes text in the notation of the WCA Regulations, Article
 * 12 (2024-01-01), with the trade's additions (slices M E S, lower-case wide turns, brackets, comments), gives a list
 * of {@link fermata.decoder.notation.Move}s or an error that names column and token; gives the core-frame turns of a
 * sequence with the hold before each.
 */
package fermata.decoder.notation;
