package fermata.daemon.document;

import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.lookahead.Outlook;
import fermata.analysis.lookahead.View;
import fermata.analysis.lookahead.Wanted;
import fermata.analysis.record.SolveRecord;
import fermata.daemon.json.SolveView;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Puts the findings of looking ahead in one solve into what is printed and kept, each with its sentence. */
final class LookingViews {
    private static final String FERMATA = "fermata";
    private static final String TILT_HINT = "tilt_hint";
    private static final String NOTHING_KNOWN = "nothing_known";
    private static final String IN_TIME = "in_time";
    private static final double SECOND = 1e6;

    private final SolveRecord solve;
    private final Map<Face, String> colours;

    LookingViews(SolveRecord solve, Map<Face, String> colours) {
        this.solve = solve;
        this.colours = colours;
    }

    SolveView.Looking view(LookAheadFinding finding) {
        String word = word(finding);
        long needed = solve.turns().get(finding.beforeTurn() - 1).atMicros();
        Long known = finding.outlook() instanceof Outlook.Identifiable seen ? needed - seen.leadMicros() : null;
        boolean isSooner = !finding.sooner().isEmpty();
        return new SolveView.Looking(
                finding.stage().written(),
                named(finding.faces()),
                word,
                SolveViews.rounded(word.equals(IN_TIME) ? finding.inTimeProbability() : finding.probability()),
                needed,
                known,
                Math.round(finding.restMicros()),
                hidden(finding),
                tilt(finding, needed),
                isSooner ? new SolveView.Sooner(named(finding.sooner()), needed - finding.soonerLeadMicros()) : null,
                sentence(finding) + (isSooner ? sooner(finding) : ""));
    }

    private static String word(LookAheadFinding finding) {
        return finding.isLookedFor()
                ? finding.outlook().fold(seen -> FERMATA, tilted -> TILT_HINT, unknown -> NOTHING_KNOWN)
                : IN_TIME;
    }

    private List<String> named(List<Face> faces) {
        return faces.stream().map(colours::get).toList();
    }

    private static List<String> hidden(LookAheadFinding finding) {
        List<String> pieces = new ArrayList<>();
        Wanted hidden = finding.outlook().hidden();
        hidden.corners().forEach(corner -> pieces.add(corner.name()));
        hidden.edges().forEach(edge -> pieces.add(edge.name()));
        return pieces;
    }

    private static SolveView.Tilt tilt(LookAheadFinding finding, long needed) {
        return finding.outlook() instanceof Outlook.WithTilt tilted
                ? new SolveView.Tilt(tilted.tilt() == View.SIDE_TILT ? "side" : "back", needed - tilted.leadMicros())
                : null;
    }

    private String sentence(LookAheadFinding finding) {
        if (!finding.isLookedFor()) {
            return subject(finding) + ": no rest for looking.";
        }
        String rested = "you rested " + seconds(finding.restMicros());
        return finding.outlook()
                .fold(
                        seen -> subject(finding) + " could be found " + seconds(seen.leadMicros())
                                + " before you needed it"
                                + (seen.byElimination() ? ", as every other place was excluded; " : "; ") + rested
                                + ".",
                        tilted -> subject(finding) + ": " + pieces(finding) + " "
                                + (tilted.tilt() == View.SIDE_TILT ? "by the palm" : "behind")
                                + ": a tilt would have shown it " + seconds(tilted.leadMicros())
                                + " before you needed it; " + rested + ".",
                        unknown -> subject(finding) + ": "
                                + (finding.isBlock()
                                        ? "not all of it could be known earlier"
                                        : "nothing could be known earlier")
                                + "; " + rested + ".");
    }

    private String subject(LookAheadFinding finding) {
        return finding.isBlock()
                ? "the block at " + colours.get(finding.faces().get(0))
                : String.join("-", named(finding.faces()));
    }

    /** {@code its corner was}; a pair has one corner and one edge, a block may hide several pieces. */
    private static String pieces(LookAheadFinding finding) {
        Wanted hidden = finding.outlook().hidden();
        if (finding.isBlock() || hidden.corners().size() + hidden.edges().size() != 1) {
            return finding.isBlock() ? "a part of it was" : "its corner and edge were";
        }
        return hidden.corners().isEmpty() ? "its edge was" : "its corner was";
    }

    private String sooner(LookAheadFinding finding) {
        String other = " " + capital(String.join("-", named(finding.sooner()))) + " could be found ";
        return finding.outlook() instanceof Outlook.Identifiable seen
                ? other + seconds(finding.soonerLeadMicros() - seen.leadMicros()) + " sooner."
                : other + seconds(finding.soonerLeadMicros()) + " before you needed one.";
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static String seconds(double micros) {
        return String.format(Locale.ROOT, "%.1f s", micros / SECOND);
    }
}
