package fermata.daemon.cli.text;

import fermata.analysis.calibration.Calibration;
import fermata.analysis.calibration.CalibrationDrill;
import fermata.daemon.json.CalibrationView;
import fermata.daemon.json.CalibrationView.Times;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A calibration for people, in 80 columns. Stateless. */
public final class CalibrationText {
    private CalibrationText() {}

    /** What is to be turned, exercise by exercise. */
    public static List<String> drill(CalibrationDrill drill) {
        List<String> lines = new ArrayList<>();
        lines.add("Do each of these " + CalibrationDrill.TIMES
                + " times, as fluently as it goes, with a breath in between,");
        lines.add("in any order and hold, whatever state the cube is in. Stop if something hurts.");
        lines.add("");
        drill.exercises()
                .forEach(exercise ->
                        lines.add(String.format(Locale.ROOT, "  %-12s %s", exercise.name(), exercise.words())));
        return lines;
    }

    /** What a drill came to, and what of it is kept. */
    public static List<String> lines(CalibrationView view) {
        List<String> lines = new ArrayList<>();
        lines.add("Times of the " + view.hand() + " hand, from " + view.source());
        lines.add("");
        view.exercises()
                .forEach(exercise -> lines.add(String.format(
                        Locale.ROOT, "  %-12s %-32s %4d times", exercise.name(), exercise.words(), exercise.done())));
        lines.add("");
        lines.add(String.format(
                Locale.ROOT,
                "  %-12s %6s   %-22s %s",
                "before it",
                "turns",
                "seconds, 95 %",
                "told from a fluent turn, 95 %"));
        view.times().forEach(times -> lines.add(times(times)));
        lines.add("");
        lines.add("  Told: how likely it takes longer than a fluent turn; 0.5 tells nothing, 1 all.");
        lines.add("  Few times are drawn towards what is usual; under " + Calibration.FEWEST + " nothing is told.");
        lines.add(
                view.kept()
                        ? "  Kept: until an evening is learned from, this hand is read by these times."
                        : "  Not kept: these times change nothing in what is told of solves.");
        return lines.stream().map(String::stripTrailing).toList();
    }

    private static String times(Times times) {
        String told = times.kind().equals("fluent")
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%.2f  %.2f to %.2f",
                        times.separation(),
                        times.separationInterval().get(0),
                        times.separationInterval().get(1));
        return String.format(
                Locale.ROOT,
                "  %-12s %6d   %.2f  %-16s %s",
                times.kind(),
                times.count(),
                times.medianUs() / 1e6,
                String.format(
                        Locale.ROOT,
                        "%.2f to %.2f",
                        times.medianIntervalUs().get(0) / 1e6,
                        times.medianIntervalUs().get(1) / 1e6),
                told);
    }
}
