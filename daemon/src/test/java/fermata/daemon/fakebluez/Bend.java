package fermata.daemon.fakebluez;

/** What is done to the next answers to a method, so many times. Guarded by the service that answers. */
final class Bend {
    /** How an answer is bent. */
    enum Way {
        /** It never comes. */
        LOSE,
        /** It comes seconds late. */
        DELAY,
        /** It is of another type. */
        ODD,
        /** It is an error. */
        REFUSE,
        /** It comes, and then another. */
        TWICE
    }

    private final Way way;
    private final String method;
    private final String error;
    private int times;

    /** {@code method} is a member's name, or empty for any; {@code error} a name and a text with a bar between. */
    Bend(Way way, String method, int times, String error) {
        this.way = way;
        this.method = method;
        this.times = times;
        this.error = error;
    }

    Way way() {
        return way;
    }

    String error() {
        return error;
    }

    boolean isFor(String called) {
        return method.isEmpty() || method.equals(called);
    }

    /** Counts one more; whether it was the last. */
    boolean isSpentBy() {
        times--;
        return times <= 0;
    }
}
