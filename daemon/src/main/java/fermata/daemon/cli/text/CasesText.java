package fermata.daemon.cli.text;

import fermata.daemon.json.CasesView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The table of cases for people, in 80 columns. Stateless. */
public final class CasesText {
    private static final double SECOND = 1e6;

    private CasesText() {}

    /** The cases, the dearest first. */
    public static List<String> lines(CasesView cases) {
        List<String> lines = new ArrayList<>();
        lines.add(RangeText.title(cases.over(), cases.from(), cases.to()));
        lines.add("");
        lines.add("  " + Words.counted(cases.solves(), "solve")
                + (cases.series() == null
                        ? ""
                        : "; "
                                + RangeText.series(
                                        cases.series().hand(), cases.series().method())));
        if (cases.cases().isEmpty()) {
            lines.add("  no case was met in them");
            return lines;
        }
        lines.add("");
        lines.addAll(Wrapped.hanging(
                "  ",
                "Medians in seconds. Cost: seconds a solve beyond what is usual in that stage; a minus is gained."
                        + " A case met fewer than 5 times has no cost yet. Usual are " + usual(cases) + "."));
        lines.add("");
        lines.add(head());
        cases.cases().forEach(one -> lines.addAll(row(one)));
        return lines.stream().map(String::stripTrailing).toList();
    }

    /** A pair is held against those of its own number, so that there are several. */
    private static String usual(CasesView cases) {
        Map<String, LongSummaryStatistics> stages = cases.cases().stream()
                .collect(Collectors.groupingBy(
                        CasesView.Case::stage, TreeMap::new, Collectors.summarizingLong(CasesView.Case::usualUs)));
        return stages.entrySet().stream()
                .map(stage -> stage.getKey() + " " + range(stage.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String range(LongSummaryStatistics micros) {
        String low = String.format(Locale.ROOT, "%.2f", micros.getMin() / SECOND);
        String high = String.format(Locale.ROOT, "%.2f", micros.getMax() / SECOND);
        return low.equals(high) ? low : low + " to " + high;
    }

    private static String head() {
        return String.format(
                Locale.ROOT,
                "  %-7s %-9s %4s %6s %6s %6s %5s  %s",
                "stage",
                "case",
                "met",
                "cost",
                "recog",
                "exec",
                "tps",
                "sequence");
    }

    private static List<String> row(CasesView.Case one) {
        String head = String.format(
                Locale.ROOT,
                "  %-7s %-9s %4d %6s %6.2f %6.2f %5.1f  ",
                one.stage(),
                one.caseName(),
                one.met(),
                one.few() ? "-" : String.format(Locale.ROOT, "%+.2f", one.costUs() / SECOND),
                one.recognitionUs() / SECOND,
                one.executionUs() / SECOND,
                one.turnsPerSecond());
        return Wrapped.hanging(head, one.sequence());
    }
}
