package fermata.daemon.cli.text;

import fermata.daemon.json.AssessmentView;
import fermata.daemon.json.AssessmentView.Bin;
import fermata.daemon.json.AssessmentView.Figures;
import fermata.daemon.json.AssessmentView.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How well holds are inferred, for people, in 80 columns. Stateless. */
public final class AssessmentText {
    /** A bin with fewer turns proves nothing. */
    private static final int FEWEST_TURNS = 50;

    private AssessmentText() {}

    /** How well holds were inferred, with what they are compared with. */
    public static List<String> lines(AssessmentView view) {
        List<String> lines = new ArrayList<>();
        lines.add("Inferred holds against " + view.file());
        lines.add("");
        lines.add("  learned from  " + view.learnedFrom());
        if (view.walkthroughsLeftOut() > 0) {
            lines.add("  left out      " + Words.counted(view.walkthroughsLeftOut(), "walkthrough"));
        }
        lines.add("  intervals     95 %, solves drawn anew; no times, as written texts have none");
        lines.add("");
        lines.add(String.format(
                Locale.ROOT,
                "  %-21s %4s %5s  %-16s %-5s  %-16s %s",
                "",
                "n",
                "turns",
                "hold",
                "layer",
                "rotation f1",
                "all"));
        part(lines, view.all());
        view.hands().forEach(part -> part(lines, part));
        view.methods().forEach(part -> part(lines, part));
        lines.add("");
        lines.add("  hold, layer: share of turns; all: solves with every hold right");
        lines.add("  solves that the weights were learned from flatter them: see --cross-validate");
        lines.add("");
        lines.addAll(rotations(view.all()));
        lines.add("");
        lines.addAll(reliability(view.all().model()));
        return lines.stream().map(String::stripTrailing).toList();
    }

    private static void part(List<String> lines, Part part) {
        lines.add(row(name(part), part.model()));
        lines.add(row("  never rotates", part.neverRotates()));
        lines.add(row("  order-2 Markov", part.markov()));
    }

    private static String name(Part part) {
        String hands = switch (part.hand()) {
            case "one" -> "one hand";
            case "two" -> "two hands";
            case "unknown" -> "hand not stated";
            default -> "";
        };
        String method = part.method().equals("all") ? "" : part.method();
        String name = (method + (method.isEmpty() || hands.isEmpty() ? "" : ", ") + hands);
        return name.isEmpty() ? "all" : name;
    }

    private static String row(String name, Figures figures) {
        return String.format(
                Locale.ROOT,
                "  %-21s %4d %5d  %-16s %.3f  %-16s %d",
                name,
                figures.solves(),
                figures.turns(),
                share(figures.holdShare(), figures.holdShareInterval()),
                figures.layerShare(),
                share(figures.rotations().f1(), figures.rotations().f1Interval()),
                figures.solvesAllRight());
    }

    private static String share(double value, List<Double> interval) {
        return String.format(Locale.ROOT, "%.3f %.2f..%.2f", value, interval.get(0), interval.get(1));
    }

    private static List<String> rotations(Part all) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "  %-18s %5s %5s %5s  %-16s %s",
                "rotations",
                "truth",
                "found",
                "hit",
                "precision",
                "recall"));
        lines.add(rotations("all", all.model()));
        lines.add(rotations("  never rotates", all.neverRotates()));
        lines.add(rotations("  order-2 Markov", all.markov()));
        return lines;
    }

    private static String rotations(String name, Figures figures) {
        AssessmentView.Rotations rotations = figures.rotations();
        return String.format(
                Locale.ROOT,
                "  %-18s %5d %5d %5d  %-16s %s",
                name,
                rotations.truth(),
                rotations.found(),
                rotations.hit(),
                share(rotations.precision(), rotations.precisionInterval()),
                share(rotations.recall(), rotations.recallInterval()));
    }

    private static List<String> reliability(Figures model) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(Locale.ROOT, "  %-24s %6s %6s %6s", "hold stated as", "turns", "right", "share"));
        for (Bin bin : model.reliability()) {
            String share = bin.turns() < FEWEST_TURNS
                    ? "fewer than " + FEWEST_TURNS + " turns prove nothing"
                    : String.format(Locale.ROOT, "%.3f", (double) bin.right() / bin.turns());
            lines.add(String.format(
                    Locale.ROOT, "  %.1f to %.1f %19d %6d  %s", bin.from(), bin.to(), bin.turns(), bin.right(), share));
        }
        lines.add("");
        lines.add(String.format(
                Locale.ROOT,
                "  stated and true share lie %.3f apart on average; log score %.3f a turn",
                model.calibrationError(),
                model.logScore()));
        return lines;
    }
}
