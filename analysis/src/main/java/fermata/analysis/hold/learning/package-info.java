/**
 * How the weights of holds are learned: everybody's from reconstructions, a solver's own from what was set right.
 *
 * <p>Main types: {@link fermata.analysis.hold.learning.HoldTrainer}, {@link
 * fermata.analysis.hold.learning.HoldHabits}. Take {@link fermata.analysis.hold.HoldExample}s, give weights; seeded,
 * so the same examples teach the same. Ascent by Adam (Kingma, Ba 2015).
 */
package fermata.analysis.hold.learning;
