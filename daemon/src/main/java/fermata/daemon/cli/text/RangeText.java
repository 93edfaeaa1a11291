package fermata.daemon.cli.text;

/** What is summed up, for people. Stateless. */
final class RangeText {
    private RangeText() {}

    /** The day, or the days up to it. */
    static String title(String over, String from, String to) {
        return switch (over) {
            case "week" -> "The week to " + Words.day(to);
            case "all" -> from.equals(to) ? Words.day(to) : Words.day(from) + " to " + Words.day(to);
            default -> Words.day(to);
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
