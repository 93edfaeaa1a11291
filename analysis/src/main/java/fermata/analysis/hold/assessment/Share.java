package fermata.analysis.hold.assessment;

/**
 * A share with its 95 % interval over solves.
 *
 * @param value 0..1
 * @param low the interval's lower end
 * @param high the interval's upper end
 */
public record Share(double value, double low, double high) {}
