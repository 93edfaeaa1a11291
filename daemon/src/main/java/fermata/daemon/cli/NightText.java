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
        lines.addAll(hotspots(night));
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

    private static List<String> hotspots(NightView night) {
        List<String> lines = new ArrayList<>();
        if (night.hotspots().isEmpty() && night.tooFew().isEmpty()) {
            return lines;
        }
        lines.add("Where time went: seconds lost per solve, with their 95 % interval");
        lines.add("");
        long dearest = night.hotspots().stream()
                .mapToLong(NightView.Hotspot::perSolveUs)
                .max()
                .orElse(1);
        night.hotspots().forEach(hotspot -> lines.add(hotspot(hotspot, Math.max(1, dearest))));
        night.tooFew()
                .forEach(few -> lines.add(String.format(
                        Locale.ROOT,
                        "  %-20s %6s  too few to say (%d)",
                        change(few.before(), few.after()),
                        "?",
                        few.occurrences())));
        return lines;
    }

    private static String hotspot(NightView.Hotspot hotspot, long dearest) {
        int bar = (int) Math.round((double) BAR_COLUMNS * hotspot.perSolveUs() / dearest);
        return String.format(
                Locale.ROOT,
                "  %-20s %6s  %-" + BAR_COLUMNS + "s  %s to %s",
                change(hotspot.before(), hotspot.after()),
                Seconds.of(hotspot.perSolveUs()),
                "=".repeat(bar),
                Seconds.of(hotspot.lowUs()),
                Seconds.of(hotspot.highUs()));
    }

    /** Empty words stand where no stages are known. */
    private static String change(String before, String after) {
        String from = before == null ? "?" : before;
        String to = after == null ? "?" : after;
        return from.equals(to) ? "in " + to : from + " > " + to;
    }

    static String counted(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
