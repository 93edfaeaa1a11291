package fermata.decoder.prompt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.madeup.MadeUpCubes;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PromptedParserTest {
    private static final String HEADER = "{\"format\":\"prompted-recording\",\"version\":1,\"device\":\"Test\"}";
    private static final String END = "{\"end\":true,\"at\":9000000}";

    @Test
    void shouldReadWhatWasWrittenWhenADrillIsKept() {
        PromptedRecording drill = MadeUpCubes.plain(5).drill();
        assertThat(PromptedParser.parse(PromptedText.lines(drill).stream()))
                .isEqualTo(new PromptedReading.Usable(drill));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"prompt\":\"twirl\",\"at\":1} | prompt | \"twirl\"",
                "{\"prompt\":\"single\",\"turns\":\"R M\",\"at\":1} | turns | \"R M\"",
                "{\"prompt\":\"single\",\"at\":1} | turns | nothing",
                "{\"prompt\":\"tilt\",\"rotation\":\"w\",\"at\":1} | rotation | \"w\"",
                "{\"prompt\":\"free\",\"at\":-5} | at | -5",
                "{\"prompt\":\"free\"} | at | nothing",
                "{\"value\":\"0g\",\"characteristic\":\"ab01\",\"at\":1} | value | \"0g\"",
                "{\"value\":\"00\",\"characteristic\":\"ab01\",\"at\":1} | characteristic | \"ab01\"",
                "{\"noise\":1} | line | {\"noise\":1}",
                "[1] | line | [1]",
                "{\"format\":\"prompted-recording\",\"version\":1,\"device\":\"B\"} | format | \"prompted-recording\""
            })
    void shouldNameLineMemberAndValueWhenALineIsWrong(String line, String member, String value) {
        PromptedProblem problem = problem(HEADER, "{\"prompt\":\"solved\",\"at\":0}", line, END);
        assertThat(problem.line()).isEqualTo(3);
        assertThat(problem.member()).isEqualTo(member);
        assertThat(problem.value()).isEqualTo(value);
    }

    @Test
    void shouldSayThatItWasCutWhenTheEndIsMissing() {
        assertThat(problem(HEADER, "{\"prompt\":\"solved\",\"at\":0}").expected())
                .contains("was cut");
    }

    @Test
    void shouldSayThatNothingWasAskedForWhenThereAreNoPrompts() {
        assertThat(problem(HEADER, END).member()).isEqualTo("prompt");
    }

    @Test
    void shouldNameTheVersionWhenItIsAnother() {
        assertThat(problem(HEADER.replace("1", "2"), END).message()).isEqualTo("line 1, version: found 2, expected 1");
    }

    @Test
    void shouldRefuseWhatWentBackInTime() {
        List<String> lines = new ArrayList<>(List.of(HEADER, "{\"prompt\":\"solved\",\"at\":500}"));
        lines.add("{\"prompt\":\"free\",\"at\":499}");
        assertThat(problem(lines.toArray(String[]::new)).expected()).contains("500");
    }

    private static PromptedProblem problem(String... lines) {
        PromptedReading reading = PromptedParser.parse(List.of(lines).stream());
        if (reading instanceof PromptedReading.Unusable unusable) {
            return unusable.problem();
        }
        throw new AssertionError("read as usable: " + reading);
    }
}
