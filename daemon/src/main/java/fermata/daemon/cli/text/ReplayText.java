package fermata.daemon.cli.text;

import fermata.daemon.json.ReplayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What became of each frame, for people: a line a frame, then the sums. Stateless. */
public final class ReplayText {
    private static final double MICROS_PER_SECOND = 1e6;

    private ReplayText() {}

    /** All of it. */
    public static List<String> lines(ReplayView view) {
        List<String> lines = new ArrayList<>();
        view.frames().forEach(frame -> lines.add(line(frame)));
        lines.add("");
        ReplayView.Counts counts = view.counts();
        lines.add(Words.counted(counts.frames(), "frame") + ": " + Words.counted(counts.turns(), "turn") + ", "
                + Words.counted(counts.gaps(), "gap") + ", " + counts.rejected() + " rejected, " + counts.leftAlone()
                + " left alone");
        return lines;
    }

    private static String line(ReplayView.Frame frame) {
        String asked = frame.asked() == null ? "" : frame.asked();
        return String.format(
                Locale.ROOT,
                "%5d %10.3f s  %-8s  %s  %s",
                frame.number(),
                frame.atUs() / MICROS_PER_SECOND,
                asked,
                frame.hex(),
                gap(frame) + became(frame));
    }

    private static String gap(ReplayView.Frame frame) {
        if (!frame.gap()) {
            return "";
        }
        return (frame.lost() == null ? "turns may be lost" : Words.counted(frame.lost(), "turn") + " lost") + ", then ";
    }

    private static String became(ReplayView.Frame frame) {
        if (frame.became().equals("turns")) {
            return frame.turns().stream()
                    .map(turn -> turn.turn() + " " + turn.source())
                    .collect(Collectors.joining(", "));
        }
        return frame.became().replace('_', ' ') + (frame.note() == null ? "" : ": " + frame.note());
    }
}
