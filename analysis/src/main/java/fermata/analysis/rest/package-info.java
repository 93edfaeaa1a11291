/**
 * Which beats (times from one turn to the next) hold a rest, how long it is, and among which causes its seconds are to
 * be shared.
 *
 * <p>Main types: {@link fermata.analysis.rest.RestReader} gives a {@link fermata.analysis.rest.RestReading} of a
 * solve by frozen parameters ({@link fermata.analysis.rhythm.RestSnapshot}, {@link
 * fermata.analysis.rest.CauseSnapshot}). Microseconds; probabilities throughout. The interval model follows Roeser, De
 * Maeyer, Leijten, Van Waes (2021), doi 10.1007/s11145-021-10203-z; the sharing of causes is our own. See {@code
 * docs/rests.md}.
 */
package fermata.analysis.rest;
