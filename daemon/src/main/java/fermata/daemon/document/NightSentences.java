package fermata.daemon.document;

import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.Hotspots;
import fermata.analysis.hotspot.RankedHotspot;
import fermata.analysis.load.HandLoad;
import fermata.analysis.load.HandLoad.Advice;
import fermata.analysis.night.NightReport.FigureTrend;
import fermata.analysis.night.Trend;
import fermata.analysis.record.StageName;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is said of a night in words, once for text and pages. Stateless. */
final class NightSentences {
    private static final double SECOND = 1e6;

    private NightSentences() {}

    /** {@code Look-ahead, from cross to pair 1: 0.42 s a solve (0.31 to 0.55), 23 clear rests.} */
    static String of(RankedHotspot spot) {
        return String.format(
                Locale.ROOT,
                "%s: %.2f s a solve (%.2f to %.2f), %d clear rests.",
                place(spot.key()),
                spot.perSolveMicros() / SECOND,
                spot.interval().low() / SECOND,
                spot.interval().high() / SECOND,
                spot.occurrences());
    }

    static String of(Hotspots.TooFew few) {
        return place(few.key()) + ": too few to say (" + few.occurrences() + ").";
    }

    private static String place(HotspotKey key) {
        List<String> parts = new ArrayList<>();
        key.cause().ifPresent(cause -> parts.add(cause.written()));
        key.after().ifPresent(after -> parts.add(change(key.before(), after)));
        if (!key.caseName().isEmpty()) {
            parts.add("case " + key.caseName());
        }
        if (!key.hold().isEmpty()) {
            parts.add(hold(key.hold()));
        }
        String place = parts.isEmpty() ? "where no stages are known" : String.join(", ", parts);
        return place.substring(0, 1).toUpperCase(Locale.ROOT) + place.substring(1);
    }

    private static String change(Optional<StageName> before, StageName after) {
        if (before.isEmpty()) {
            return "before " + stage(after);
        }
        return before.get() == after ? "within " + stage(after) : "from " + stage(before.get()) + " to " + stage(after);
    }

    private static String stage(StageName name) {
        return switch (name) {
            case AUF -> "last turn";
            case EO -> "edges oriented";
            case BLOCK1 -> "first block";
            case BLOCK2 -> "second block";
            case LAST_EDGES -> "last six edges";
            default -> name.written().replaceAll("(\\d)$", " $1").replace('_', ' ');
        };
    }

    private static String hold(String hold) {
        return hold.length() == 2
                ? "held " + hold.charAt(0) + " up and " + hold.charAt(1) + " in front"
                : "hold not known";
    }

    static String of(FigureTrend figure) {
        String name = switch (figure.figure()) {
            case "time" -> "The night's median time";
            case "rests" -> "Time lost to rests";
            case "unexplained" -> "Time lost without a known cause";
            default -> "Time lost to " + figure.figure();
        };
        return figure.trend()
                .fold(
                        moves -> moving(name, moves),
                        none -> name + ": no change can be seen yet, over " + none.nights() + " nights.",
                        few -> name + ": too few nights to say (" + few.nights() + " of " + few.needed() + ").");
    }

    private static String moving(String name, Trend.Moves moves) {
        return String.format(
                Locale.ROOT,
                "%s %s by %.3f s a day (%.3f to %.3f), seen over %d nights with %d figures judged together.",
                name,
                moves.perDay() < 0 ? "falls" : "rises",
                Math.abs(moves.perDay()) / SECOND,
                nearer(moves) / SECOND,
                farther(moves) / SECOND,
                moves.nights(),
                moves.together());
    }

    private static double nearer(Trend.Moves moves) {
        return Math.min(
                Math.abs(moves.interval().low()), Math.abs(moves.interval().high()));
    }

    private static double farther(Trend.Moves moves) {
        return Math.max(
                Math.abs(moves.interval().low()), Math.abs(moves.interval().high()));
    }

    static List<String> advice(HandLoad load) {
        return load.advice().stream().map(advice -> advice(advice, load)).toList();
    }

    private static String advice(Advice advice, HandLoad load) {
        return switch (advice) {
            case TAKE_SHORT_BREAKS ->
                String.format(
                        Locale.ROOT,
                        "The longest stretch without a break of %d minutes was %.0f minutes: short breaks,"
                                + " taken often, are more comfortable than one long one.",
                        HandLoad.BREAK_MINUTES,
                        load.longestMinutes());
            case STOP_WHEN_IT_HURTS ->
                "Pain, numbness or weakness are a reason to stop and to see a licensed clinician.";
        };
    }
}
