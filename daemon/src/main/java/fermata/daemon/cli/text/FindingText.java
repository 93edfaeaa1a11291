package fermata.daemon.cli.text;

import fermata.decoder.finding.Doubt;
import fermata.decoder.finding.Finding;
import java.util.ArrayList;
import java.util.List;

/** What a recording says about a cube's layout, for people. Stateless. */
public final class FindingText {
    private FindingText() {}

    /** What was found, why it may be believed, and what to do where it may not. */
    public static List<String> lines(Finding finding) {
        if (finding instanceof Finding.Sound sound) {
            return sound(sound);
        }
        return finding instanceof Finding.Doubtful doubtful
                ? doubtful(doubtful)
                : enciphered((Finding.Enciphered) finding);
    }

    private static List<String> sound(Finding.Sound sound) {
        List<String> lines = new ArrayList<>();
        lines.add(
                "The profile is sound: it reads " + Words.counted(sound.proof().turns(), "turn") + ", "
                        + sound.proof().asAsked() + " of the "
                        + Words.counted(sound.proof().prompts(), "prompt")
                        + " that it was not learned from as they were asked,");
        lines.add("and all turns lead from solved to solved"
                + (sound.proof().missing() == 0
                        ? "."
                        : ", with " + Words.counted(sound.proof().missing(), "turn")
                                + " put in where frames were lost."));
        sound.unexplained().forEach(bits -> lines.add("Nothing explains " + bits + "; they are left alone."));
        return lines;
    }

    private static List<String> doubtful(Finding.Doubtful doubtful) {
        List<String> lines = new ArrayList<>();
        lines.add("No profile was written, since none is sound. What is doubtful, and what settles it:");
        doubtful.doubts().stream().map(Doubt::message).forEach(doubt -> lines.add("  " + doubt));
        return lines;
    }

    private static List<String> enciphered(Finding.Enciphered enciphered) {
        List<String> lines = new ArrayList<>();
        lines.add("The frames are enciphered: no profile can read them. The evidence:");
        enciphered.evidence().forEach(each -> lines.add("  " + each));
        lines.add("Only who has the key can read them. A cube that sends plain frames works with fermata.");
        return lines;
    }
}
