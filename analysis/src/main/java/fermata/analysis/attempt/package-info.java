/**
 * Where a capture's turns are attempts, found without a touch: scrambled, a pause, solved or abandoned; all else is
 * other turning.
 *
 * <p>Main type: {@link fermata.analysis.attempt.AttemptFinder}. Takes a log, gives segments with raw indexes. Solved
 * means equal to the reference in force. Announced scrambles fix the boundary between scramble and solve; without one
 * it is inferred by {@link fermata.analysis.attempt.BoundaryModel}, with a probability. Where turns were lost, {@link
 * fermata.analysis.track.CubeTracker} tells the state by where the turning stops. No penalties, no inspection.
 */
package fermata.analysis.attempt;
