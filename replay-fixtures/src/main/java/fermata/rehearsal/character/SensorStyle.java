package fermata.rehearsal.character;

/**
 * A made-up motion sensor and the hand that holds it. The figures of those given here are our own; no measured source.
 *
 * @param everyMicros from sample to sample
 * @param lostShare share of samples that never arrive
 * @param noiseDegrees standard deviation of the error about each axis, drawn anew for each sample
 * @param driftDegrees the vertical axis walks by so much in the square root of a second, standard deviation
 * @param biasDegrees and turns steadily by so much a second
 * @param scaleError share of each rotation about the vertical that the sensor takes for drift
 * @param leanDegrees how far from level the hand holds the cube, at most; drawn once an evening
 * @param swayDegrees how far that sways to and fro
 * @param partialShare share of holds that are not held in full
 * @param partialDegrees how far such a hold stays short of its rotation, or leans to one side, at most
 */
public record SensorStyle(
        long everyMicros,
        double lostShare,
        double noiseDegrees,
        double driftDegrees,
        double biasDegrees,
        double scaleError,
        double leanDegrees,
        double swayDegrees,
        double partialShare,
        double partialDegrees) {
    public SensorStyle {
        Ranges.requirePositive("everyMicros", everyMicros);
        Ranges.requireShare("lostShare", lostShare);
        Ranges.requireShare("partialShare", partialShare);
    }

    /** A fair sensor in a usual hand. */
    public static SensorStyle usual() {
        return new SensorStyle(50_000, 0.05, 3, 1.5, 0.2, 0.01, 20, 4, 0.2, 40);
    }

    /** A poor sensor in a restless hand. */
    public static SensorStyle poor() {
        return new SensorStyle(70_000, 0.1, 7, 3, 0.5, 0.03, 20, 6, 0.2, 40);
    }
}
