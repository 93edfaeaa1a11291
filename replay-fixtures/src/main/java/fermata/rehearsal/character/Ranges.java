package fermata.rehearsal.character;

/** Checks of numbers that say how likely or how long something is. */
public final class Ranges {
    private Ranges() {}

    public static void requireShare(String name, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(name + " " + value + " is not in 0..1");
        }
    }

    static void requirePositive(String name, double value) {
        if (!(value > 0)) {
            throw new IllegalArgumentException(name + " " + value + " is not above zero");
        }
    }
}
