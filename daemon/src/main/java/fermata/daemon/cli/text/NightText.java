package fermata.daemon.cli.text;

import fermata.daemon.json.NightView;
import fermata.daemon.json.WrittenDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A night, a week or all nights for people, in 80 columns. Stateless. */
public final class NightText {
    private NightText() {}

    /** A night, its dearest places first. */
    public static List<String> lines(NightView night) {
        List<String> lines = new ArrayList<>();
        lines.add(RangeText.title(night.over(), night.from(), night.to()));
        if (night.to().equals(WrittenDay.UNKNOWN_WORD)) {
            lines.add("The date was not known when this was recorded; it moves to its day as soon as it is.");
        }
        lines.add("");
        lines.add("  " + Words.counted(night.solves(), "solve")
                + (night.abandoned() > 0 ? ", " + night.abandoned() + " abandoned" : "")
                + (night.nights() > 1 ? ", on " + night.nights() + " nights" : "")
                + "; " + RangeText.series(night.series().hand(), night.series().method()));
        lines.add("");
        lines.add(row("best", Seconds.of(night.bestUs()), ""));
        lines.add(row(
                "mean",
                Seconds.ofFigure(night.meanUs()),
                night.spreadUs() == null ? "" : "give or take " + Seconds.ofFigure(night.spreadUs())));
        lines.add(averages("average of 5", night.average5Us(), 5));
        lines.add(averages("trimmed 12", night.trimmed12Us(), 12));
        lines.addAll(stages(night));
        lines.addAll(LossText.lines(night));
        lines.addAll(trends(night));
        lines.addAll(load(night.load()));
        lines.addAll(others(night));
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

    private static List<String> stages(NightView night) {
        List<String> lines = new ArrayList<>();
        if (!night.stages().isEmpty()) {
            lines.add("");
            lines.add("Stages: median, and share of all time");
            lines.add("");
        }
        night.stages()
                .forEach(stage -> lines.add(String.format(
                        Locale.ROOT,
                        "  %-14s %9s   %3.0f %%",
                        stage.name(),
                        Seconds.ofFigure(stage.medianUs()),
                        100 * stage.share())));
        return lines;
    }

    /** What moves; where nothing does, what is said of the time stands for all. */
    private static List<String> trends(NightView night) {
        List<NightView.Trend> moving = night.trends().stream()
                .filter(trend -> trend.says().equals("moves"))
                .toList();
        List<NightView.Trend> told =
                moving.isEmpty() ? night.trends().stream().limit(1).toList() : moving;
        List<String> lines = new ArrayList<>(List.of("", "From night to night", ""));
        told.forEach(trend -> lines.addAll(Wrapped.hanging("  ", trend.sentence())));
        return lines;
    }

    private static List<String> load(NightView.Load load) {
        List<String> lines = new ArrayList<>(List.of("", "The hand", ""));
        lines.addAll(Wrapped.hanging(
                "  ",
                String.format(
                        Locale.ROOT,
                        "%s, about %s that cost time, %.1f minutes of turning; longest stretch %.0f minutes.",
                        Words.counted(load.turns(), "turn"),
                        Words.counted(load.regrips(), "regrip"),
                        load.minutes(),
                        load.longestStretchMinutes())));
        load.advice().forEach(sentence -> lines.addAll(Wrapped.hanging("  ", sentence)));
        return lines;
    }

    private static List<String> others(NightView night) {
        List<String> lines = new ArrayList<>();
        if (!night.otherSeries().isEmpty()) {
            lines.addAll(List.of("", "Not compared with these", ""));
        }
        for (NightView.OtherSeries other : night.otherSeries()) {
            lines.add("  " + RangeText.series(other.hand(), other.method())
                    + (other.otherSolver() ? ", another solver" : "")
                    + (other.otherCube() ? ", another cube" : "")
                    + (other.setAside() ? ", set aside" : "")
                    + ": " + Words.counted(other.solves(), "solve") + ", mean " + Seconds.ofFigure(other.meanUs()));
        }
        return lines;
    }
}
