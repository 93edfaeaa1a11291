package fermata.daemon.cli;

/** What is summed up, for people. Stateless. */
final class RangeText {
    private RangeText() {}

    /** The day, or the days up to it. */
    static String title(String over, String from, String to) {
        return switch (over) {
            case "week" -> "The week to " + Days.written(to);
            case "all" -> from.equals(to) ? Days.written(to) : Days.written(from) + " to " + Days.written(to);
            default -> Days.written(to);
        };
    }

    /** {@code left hand, CFOP}. */
    static String series(String hand, String method) {
        return hand(hand) + ", " + (method.equals("untold") ? "method not known" : method);
    }

    static String hand(String hand) {
        return switch (hand) {
            case "two" -> "two hands";
            case "unknown" -> "hand not stated";
            default -> hand + " hand";
        };
    }
}
