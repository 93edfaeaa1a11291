/**
 * How right the inferred holds are: readings compared with written reconstructions.
 *
 * <p>Main type: {@link fermata.analysis.hold.assessment.HoldAssessment}. Takes true tracks and readings and
 * gives shares of turns whose layer and hold are right, rotations found, and how far the stated probabilities
 * can be trusted, with bootstrap intervals over solves.
 */
package fermata.analysis.hold.assessment;
