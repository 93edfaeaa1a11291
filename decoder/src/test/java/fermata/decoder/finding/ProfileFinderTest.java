package fermata.decoder.finding;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.madeup.MadeUpCube;
import fermata.decoder.madeup.MadeUpCubes;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.ProfileWriter;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Twenty of the cubes that {@link ProfileFinderProofTest} has four hundred of, and what must never be guessed. */
class ProfileFinderTest {
    @ParameterizedTest
    @ValueSource(
            longs = {101, 102, 103, 104, 105, 106, 107, 108, 109, 110, 111, 112, 113, 114, 115, 116, 117, 118, 119, 120
            })
    void shouldReadAFreshEveningOrSayWhatIsMissingWhenACubeWasDrilled(long seed) {
        FindingRun run = FindingRun.of(MadeUpCubes.plain(seed));
        assertThat(run.wrong()).as(run.cube().describe()).isEmpty();
        assertThat(run.finding()).isNotInstanceOf(Finding.Enciphered.class);
        if (run.finding() instanceof Finding.Sound sound) {
            assertThat(StreamProfile.parse(ProfileWriter.write(sound.profile())))
                    .isInstanceOfSatisfying(
                            ProfileReading.Usable.class,
                            read -> assertThat(ProfileWriter.write(read.profile()))
                                    .isEqualTo(ProfileWriter.write(sound.profile())));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {101, 102, 103, 104})
    void shouldNameACipherWithItsEvidenceWhenFramesAreEnciphered(long seed) {
        Finding finding = ProfileFinder.find(MadeUpCubes.enciphered(seed).drill());
        assertThat(finding)
                .isInstanceOfSatisfying(
                        Finding.Enciphered.class,
                        named -> assertThat(named.evidence()).hasSizeGreaterThanOrEqualTo(3));
    }

    @Test
    void shouldNotCallAProfileSoundWhenTheDrillEndsBeforeTheSolve() {
        PromptedRecording whole = MadeUpCubes.plain(2).drill();
        int free = whole.prompts().size() - 1;
        long end = whole.prompts().get(free).atMicros();
        PromptedRecording cut = new PromptedRecording(
                whole.device(),
                whole.services(),
                whole.bonded(),
                whole.prompts().subList(0, free),
                whole.values().stream().filter(v -> v.arrivalMicros() < end).toList(),
                end);
        assertThat(ProfileFinder.find(whole)).isInstanceOf(Finding.Sound.class);
        assertThat(ProfileFinder.find(cut))
                .isInstanceOfSatisfying(
                        Finding.Doubtful.class,
                        doubtful -> assertThat(doubtful.doubts())
                                .extracting(Doubt::field)
                                .containsExactly("drill"));
    }

    @Test
    void shouldSayWhatToDoWhenNothingWasHeard() {
        PromptedRecording whole = MadeUpCubes.plain(2).drill();
        PromptedRecording silent = new PromptedRecording(
                whole.device(), whole.services(), whole.bonded(), whole.prompts(), List.of(), whole.endMicros());
        assertThat(ProfileFinder.find(silent))
                .isInstanceOfSatisfying(
                        Finding.Doubtful.class,
                        doubtful ->
                                assertThat(doubtful.doubts().get(0).toSettle()).contains("drill again"));
    }

    @Test
    void shouldFindTheSameWhenAskedAgain() {
        MadeUpCube cube = MadeUpCubes.plain(3);
        String first = ProfileFinder.find(cube.drill()).toString().replaceAll("Pattern@\\w+", "");
        assertThat(ProfileFinder.find(MadeUpCubes.plain(3).drill()).toString().replaceAll("Pattern@\\w+", ""))
                .isEqualTo(first);
    }
}
