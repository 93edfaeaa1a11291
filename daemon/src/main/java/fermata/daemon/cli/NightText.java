package fermata.daemon.cli;

import fermata.daemon.json.NightView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A night for people, in 80 columns. Stateless. */
final class NightText {
    private static final int BAR_COLUMNS = 24;

    private NightText() {}

    static List<String> lines(NightView night) {
        List<String> lines = new ArrayList<>();
        lines.add(Days.written(night.day()));
        lines.add("");
        lines.add("  " + counted(night.solves(), "solve")
                + (night.abandoned() > 0 ? ", " + night.abandoned() + " abandoned" : ""));
        lines.add("");
        lines.add(row("best", Seconds.of(night.bestUs()), ""));
        lines.add(row(
                "mean",
                Seconds.of(night.meanUs()),
                night.spreadUs() == null ? "" : "give or take " + Seconds.of(night.spreadUs())));
        lines.add(averages("average of 5", night.average5Us(), 5));
        lines.add(averages("trimmed 12", night.trimmed12Us(), 12));
        lines.add("");
        lines.addAll(hotspots(night.hotspots()));
        return lines.stream().map(String::stripTrailing).toList();
    }

    private static String averages(String name, NightView.Averages averages, int needed) {
        if (averages.latest() == null) {
            return row(name, "-", "takes " + needed + " attempts");
        }
        return row(name, time(averages.latest()), "best " + time(averages.best()));
    }

    private static String time(Object result) {
        return result instanceof Number micros
                ? Seconds.of(micros.longValue())
                : result == null ? "-" : result.toString();
    }

    private static String row(String name, String value, String remark) {
        return String.format(Locale.ROOT, "  %-14s %9s   %s", name, value, remark);
    }

    private static List<String> hotspots(List<NightView.Hotspot> hotspots) {
        List<String> lines = new ArrayList<>();
        if (hotspots.isEmpty()) {
            return lines;
        }
        lines.add("Rests at the change of stages: the median of a solve, longest first");
        lines.add("");
        long longest = hotspots.stream()
                .filter(hotspot -> hotspot.restUs() != null)
                .mapToLong(NightView.Hotspot::restUs)
                .max()
                .orElse(0);
        for (NightView.Hotspot hotspot : hotspots) {
            lines.add(hotspot(hotspot, longest));
        }
        return lines;
    }

    private static String hotspot(NightView.Hotspot hotspot, long longest) {
        String change = hotspot.before() + " > " + hotspot.after();
        if (hotspot.restUs() == null) {
            return String.format(
                    Locale.ROOT, "  %-20s %6s  too few to say: %s", change, "?", counted(hotspot.count(), "solve"));
        }
        int bar = longest == 0 ? 0 : (int) Math.round((double) BAR_COLUMNS * hotspot.restUs() / longest);
        return String.format(
                Locale.ROOT,
                "  %-20s %6s  %-" + BAR_COLUMNS + "s  %s",
                change,
                Seconds.of(hotspot.restUs()),
                "=".repeat(bar),
                counted(hotspot.count(), "solve"));
    }

    static String counted(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
