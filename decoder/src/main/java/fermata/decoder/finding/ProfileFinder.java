package fermata.decoder.finding;

import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the profile of a device from a drill with it. Cost: a second or a few of one core for a drill of four minutes,
 * most of it for long frames; some megabytes. One use.
 */
public final class ProfileFinder {
    private final PromptedRecording recording;
    private final Lesson lesson;
    private final List<FrameGroup> groups;
    private final List<Doubt> doubts = new ArrayList<>();

    private ProfileFinder(PromptedRecording recording) {
        this.recording = recording;
        this.lesson = new Lesson(recording);
        this.groups = FrameGroups.of(recording);
    }

    /** What a drill says. Never throws for what was heard; the same recording gives the same finding. */
    public static Finding find(PromptedRecording recording) {
        return new ProfileFinder(recording).find();
    }

    private Finding find() {
        return byTurns().or(this::byStates).or(this::byCipher).orElseGet(() -> {
            if (doubts.isEmpty()) {
                doubts.add(new Doubt(
                        "code",
                        "no field of any frame follows the turns that were asked for",
                        "Do the drill again, slowly, and begin with the cube solved."));
            }
            return new Finding.Doubtful(doubts);
        });
    }

    private static Optional<Checksum> check(FrameGroup group) {
        return new CheckSearch(group.length(), group.distinct()).find();
    }

    private Optional<Finding> byTurns() {
        List<TurnsFound> candidates = new ArrayList<>();
        for (FrameGroup group : groups) {
            Optional<Checksum> check = check(group);
            BitSet taken = check.map(c -> BitPlace.covered(c.field())).orElseGet(BitSet::new);
            new CodeSearch(group, lesson, taken)
                    .find()
                    .ifPresent(code -> candidates.add(new TurnsSearch(group, code, check, recording).find()));
        }
        candidates.sort(Comparator.comparingInt(c -> -c.code().agreeing()));
        for (TurnsFound found : candidates) {
            Optional<Finding> sound = proved(found.group(), found.layout(), found.unexplained(), doubts(found));
            if (sound.isPresent()) {
                return sound;
            }
        }
        return Optional.empty();
    }

    private static List<Doubt> doubts(TurnsFound found) {
        List<Doubt> own = new ArrayList<>();
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
        return own;
    }

    private Optional<Finding> byStates() {
        for (FrameGroup group : groups) {
            Optional<FrameLayout.State> state = StateSearch.find(group, lesson, check(group));
            Optional<Finding> sound = state.flatMap(layout -> proved(group, layout, List.of(), List.of()));
            if (sound.isPresent()) {
                return sound;
            }
        }
        return Optional.empty();
    }

    /** Only where nothing was found at all: a profile that falls short speaks against a cipher. */
    private Optional<Finding> byCipher() {
        return doubts.isEmpty()
                ? groups.stream()
                        .flatMap(group -> CipherEvidence.of(group, lesson).stream())
                        .findFirst()
                        .map(Finding.Enciphered::new)
                : Optional.empty();
    }

    private Optional<Finding> proved(
            FrameGroup group, FrameLayout layout, List<String> unexplained, List<Doubt> known) {
        StreamProfile profile = ProfileAssembly.of(recording, group.characteristic(), layout);
        Proof proof = new Prover(profile, recording, lesson.firstProof()).prove();
        if (known.isEmpty() && proof.isSound()) {
            return Optional.of(new Finding.Sound(profile, unexplained, proof));
        }
        if (doubts.isEmpty()) {
            doubts.addAll(known);
            doubts.addAll(proof.doubts());
        }
        return Optional.empty();
    }
}
