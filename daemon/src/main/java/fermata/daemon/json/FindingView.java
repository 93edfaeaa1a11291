package fermata.daemon.json;

import fermata.decoder.finding.Doubt;
import fermata.decoder.finding.Finding;
import fermata.decoder.finding.Proof;
import fermata.decoder.stream.profile.ProfileWriter;
import java.util.List;
import tools.jackson.databind.JsonNode;

/**
 * What a recording says about a cube's layout, as {@code profile find --json} prints it; docs/formats.md says what each
 * member means. {@code profile}, {@code out} and {@code proof} are null where there are none.
 */
public record FindingView(
        String recording,
        String verdict,
        String out,
        JsonNode profile,
        ProofView proof,
        List<String> unexplained,
        List<Doubt> doubts,
        List<String> evidence) {
    /** What speaks for a profile. */
    public record ProofView(int turns, int prompts, int asAsked, int missing) {
        private static ProofView of(Proof proof) {
            return new ProofView(proof.turns(), proof.prompts(), proof.asAsked(), proof.missing());
        }
    }

    /**
     * Of a finding.
     *
     * @param recording the file it is from
     * @param out the file its profile is in, null if it is in none
     */
    public static FindingView of(String recording, String out, Finding finding) {
        if (finding instanceof Finding.Sound sound) {
            JsonNode profile = Json.read(ProfileWriter.write(sound.profile()));
            ProofView proof = ProofView.of(sound.proof());
            return new FindingView(recording, "sound", out, profile, proof, sound.unexplained(), List.of(), List.of());
        }
        if (finding instanceof Finding.Doubtful doubtful) {
            return new FindingView(recording, "doubtful", null, null, null, List.of(), doubtful.doubts(), List.of());
        }
        List<String> evidence = ((Finding.Enciphered) finding).evidence();
        return new FindingView(recording, "enciphered", null, null, null, List.of(), List.of(), evidence);
    }
}
