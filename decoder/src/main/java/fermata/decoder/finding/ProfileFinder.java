package fermata.decoder.finding;

import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds the profile of a device from a drill. Stateless. Cost: see docs/finding.md. */
public final class ProfileFinder {
    private ProfileFinder() {}

    /** What a drill says. Never throws for what was heard; the same recording gives the same finding. */
    public static Finding find(PromptedRecording recording) {
        Lesson lesson = new Lesson(recording);
        List<FrameGroup> groups = FrameGroups.of(recording);
        List<TurnsFound> candidates = new ArrayList<>();
        for (FrameGroup group : groups) {
            Optional<Checksum> check = new CheckSearch(group.length(), group.distinct()).find();
            BitSet taken = check.map(c -> BitPlace.covered(c.field())).orElseGet(BitSet::new);
            new CodeSearch(group, lesson, taken)
                    .find()
                    .ifPresent(code -> candidates.add(new TurnsSearch(group, code, check, recording).find()));
        }
        candidates.sort(Comparator.comparingInt(c -> -c.code().agreeing()));
        List<Doubt> doubts = new ArrayList<>();
        for (TurnsFound found : candidates) {
            StreamProfile profile = ProfileAssembly.of(recording, found.group().characteristic(), found.layout());
            Proof proof = new Prover(profile, recording, lesson.firstProof()).prove();
            List<Doubt> own = new ArrayList<>(proof.doubts());
            if (!found.code().missing().isEmpty()) {
                own.add(new Doubt(
                        "turns",
                        "no code was heard for " + found.code().missing(),
                        "Turn these a few times, each with a pause after it."));
            }
            if (found.repeatsUncounted()) {
                own.add(new Doubt(
                        "fresh",
                        "the frames repeat earlier turns, and no field was seen to tell how many of theirs are new",
                        "Turn a run of eight turns as quickly as you can, twice."));
            }
            if (own.isEmpty()) {
                return new Finding.Sound(profile, found.unexplained(), proof);
            }
            doubts = doubts.isEmpty() ? own : doubts;
        }
        return new Finding.Doubtful(
                doubts.isEmpty()
                        ? List.of(new Doubt(
                                "code",
                                "no field of any frame follows the turns that were asked for",
                                "Do the drill again, slowly."))
                        : doubts);
    }
}
