/**
 * What the cube in the hand is doing, told by its turns, by what it says of itself and by what is said about it: one
 * tracker for the page that follows an evening and for the finding of attempts in its log.
 *
 * <p>Main type: {@link fermata.analysis.track.CubeTracker}, which takes the events of a log in the order in which they
 * happened on the cube. {@link fermata.analysis.track.StreamOrder} makes that order of what a stream tells, where a
 * state may come late or ahead of its turns; {@link fermata.analysis.track.FollowedCube} joins the two for whoever must
 * know the state now. Gives states; times are microseconds, and only intervals of a second and more mean anything here.
 * No source: bookkeeping, but for the priors that {@link fermata.analysis.track.LostTurns} states.
 */
package fermata.analysis.track;
