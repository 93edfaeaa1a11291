package fermata.daemon.cli.text;

import fermata.daemon.json.NightView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Where a night's time went, for people, in 80 columns. Stateless. */
final class LossText {
    private static final int BAR_COLUMNS = 24;
    private static final int FINE_TOLD = 5;

    private LossText() {}

    /** Nothing where nothing rested. */
    static List<String> lines(NightView night) {
        List<String> lines = new ArrayList<>();
        if (night.hotspots().isEmpty() && night.tooFew().isEmpty()) {
            return lines;
        }
        lines.add("");
        lines.add("Where time went: seconds lost per solve, with their 95 % interval");
        lines.addAll(bars(night, spot -> spot.cause() == null, spot -> change(spot.before(), spot.after())));
        lines.addAll(bars(night, spot -> spot.after() == null, NightView.Hotspot::cause));
        List<NightView.Hotspot> fine = night.hotspots().stream()
                .filter(spot -> spot.cause() != null && spot.after() != null && spot.hold() == null)
                .limit(FINE_TOLD)
                .toList();
        if (!fine.isEmpty()) {
            lines.add("");
            fine.forEach(spot -> lines.addAll(Wrapped.hanging("  ", spot.sentence() + clearest(spot))));
        }
        if (!night.tooFew().isEmpty()) {
            lines.add("");
            night.tooFew().forEach(few -> lines.addAll(Wrapped.hanging("  ", few.sentence())));
        }
        return lines;
    }

    /** By which solves to see it, for the command show. */
    private static String clearest(NightView.Hotspot spot) {
        return spot.examples().stream()
                .map(NightView.Example::id)
                .distinct()
                .collect(Collectors.joining(", ", " See ", "."));
    }

    private static List<String> bars(
            NightView night, Predicate<NightView.Hotspot> which, Function<NightView.Hotspot, String> name) {
        List<NightView.Hotspot> spots = night.hotspots().stream().filter(which).toList();
        long dearest = Math.max(
                1, spots.stream().mapToLong(NightView.Hotspot::perSolveUs).max().orElse(1));
        List<String> lines = new ArrayList<>();
        if (!spots.isEmpty()) {
            lines.add("");
        }
        for (NightView.Hotspot spot : spots) {
            int bar = (int) Math.round((double) BAR_COLUMNS * spot.perSolveUs() / dearest);
            lines.add(String.format(
                    Locale.ROOT,
                    "  %-20s %6s  %-" + BAR_COLUMNS + "s  %s to %s",
                    name.apply(spot),
                    Seconds.ofFigure(spot.perSolveUs()),
                    "=".repeat(bar),
                    Seconds.ofFigure(spot.lowUs()),
                    Seconds.ofFigure(spot.highUs())));
        }
        return lines;
    }

    private static String change(String before, String after) {
        if (before == null) {
            return "before " + after;
        }
        return before.equals(after) ? "in " + after : before + " > " + after;
    }
}
