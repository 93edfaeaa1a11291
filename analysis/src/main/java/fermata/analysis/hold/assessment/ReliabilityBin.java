package fermata.analysis.hold.assessment;

/**
 * Turns whose hold was stated with a probability in one tenth of 0..1. Under 50 turns a bin proves nothing.
 *
 * @param from the tenth's lower end
 * @param to its upper end, belonging to it only when it is 1
 * @param turns how many
 * @param right how many of them were right
 * @param stated the mean of their stated probabilities; 0 if there are none
 */
public record ReliabilityBin(double from, double to, int turns, int right, double stated) {}
