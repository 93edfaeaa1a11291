package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.holdmodel.HoldFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class AssessTest {
    private static final String WALKTHROUGH = "\"note\": \"walkthrough\"";
    private static final String SOLVE = "{\"hands\":\"one\",\"method\":\"CFOP\",\"scramble\":\"R U\","
            + "\"lines\":[{\"moves\":\"z R' x2 U'\",\"stage\":\"other\"}]}";

    @TempDir
    Path directory;

    private List<String> written;

    @BeforeEach
    void readTheReconstructions() throws IOException {
        try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            written = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        }
    }

    private String some(int solves, boolean withWalkthroughs) {
        return written.stream()
                        .filter(line -> withWalkthroughs || !line.contains(WALKTHROUGH))
                        .limit(solves)
                        .collect(Collectors.joining("\n"))
                + "\n";
    }

    @Test
    void shouldPrintTheShapeThatTheDocumentPromises() throws IOException {
        Outcome outcome = CommandRig.runPlain(some(8, false), "assess", "-", "--json");

        assertThat(outcome.code()).isZero();
        Set<String> members = new TreeSet<>();
        for (String path : DocumentedShapes.found(outcome.json())) {
            String place = path.replaceFirst("^(hands|methods)\\[]\\.", "");
            members.add(place.replaceFirst("^(never_rotates|markov)\\.", ""));
            if (!place.equals(path)) {
                members.add(path.substring(0, path.indexOf('.')));
            }
            if (place.matches("(never_rotates|markov)\\..*")) {
                members.add(place.substring(0, place.indexOf('.')));
            }
        }
        // A reader that states no probability has an empty list.
        members.remove("reliability");
        assertThat(members).isEqualTo(DocumentedShapes.promised("assess"));
    }

    @Test
    void shouldAddUpOverHandsAndMethods() {
        JsonNode all =
                CommandRig.runPlain(some(12, false), "assess", "-", "--json").json();

        assertThat(sum(all.get("hands"), "turns", "all"))
                .isEqualTo(all.get("turns").intValue());
        int solves = 0;
        for (JsonNode part : all.get("methods")) {
            solves += part.get("hand").stringValue().equals("all")
                    ? part.get("solves").intValue()
                    : 0;
        }
        assertThat(solves).isEqualTo(12).isEqualTo(all.get("solves").intValue());
        int binned = 0;
        for (JsonNode bin : all.get("reliability")) {
            binned += bin.get("turns").intValue();
        }
        assertThat(binned).isEqualTo(all.get("turns").intValue());
    }

    private static int sum(JsonNode parts, String member, String method) {
        int sum = 0;
        for (JsonNode part : parts) {
            sum += part.get("method").stringValue().equals(method)
                    ? part.get(member).intValue()
                    : 0;
        }
        return sum;
    }

    /** Worked by hand: held as the scramble is, R' and U' are seen as what the writer's holds make of them. */
    @Test
    void shouldCountWhatOneWhoNeverRotatesGetsWrong() {
        JsonNode never = CommandRig.runPlain(SOLVE + "\n", "assess", "-", "--json")
                .json()
                .get("never_rotates");

        assertThat(never.get("turns").intValue()).isEqualTo(2);
        assertThat(never.get("rotations").get("truth").intValue()).isEqualTo(1);
        assertThat(never.get("rotations").get("found").intValue()).isZero();
        assertThat(never.get("rotations").get("f1").doubleValue()).isZero();
    }

    @Test
    void shouldLeaveWalkthroughsOut() {
        long walkthroughs =
                written.stream().filter(line -> line.contains(WALKTHROUGH)).count();
        String walked =
                written.stream().filter(line -> line.contains(WALKTHROUGH)).collect(Collectors.joining("\n"));

        JsonNode found = CommandRig.runPlain(some(3, false) + walked, "assess", "-", "--json")
                .json();

        assertThat(walkthroughs).isPositive();
        assertThat(found.get("walkthroughs_left_out").longValue()).isEqualTo(walkthroughs);
        assertThat(found.get("solves").intValue()).isEqualTo(3);
        assertThat(CommandRig.runPlain(walked, "assess", "-").err()).contains("walkthroughs only");
    }

    @Test
    void shouldLearnFromTheRestAloneWhenCrossValidating() {
        // Two solves in two groups: each is read by what the other taught, so it cannot do better than with both.
        String two = some(2, false);
        Outcome outcome = CommandRig.runPlain(two, "assess", "-", "--cross-validate", "--folds", "9", "--json");

        assertThat(outcome.code()).isZero();
        assertThat(outcome.json().get("learned_from").stringValue()).contains("2 folds");
        double shipped = CommandRig.runPlain(two, "assess", "-", "--json")
                .json()
                .get("hold_share")
                .doubleValue();
        assertThat(outcome.json().get("hold_share").doubleValue()).isLessThan(shipped);
    }

    @Test
    void shouldPrintTextWithinEightyColumns() {
        Outcome outcome = CommandRig.runPlain(some(12, false), "assess", "-");

        assertThat(outcome.lines())
                .allSatisfy(
                        line -> assertThat(line).hasSizeLessThanOrEqualTo(80).doesNotEndWith(" "));
        assertThat(outcome.out()).contains("never rotates").contains("order-2 Markov");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"one\"|\"three\"|hands is \"three\", expected one of one, two, unknown",
                "R U|R K|scramble is \"R K\", expected moves in WCA notation",
                "z R'|z Q'|lines[0].moves is \"z Q' x2 U'\"",
                "x2 U'|x2 U2|lines is",
                "\"method\"|\"manner\"|method is missing",
                "\"lines\"|\"words\"|expected a reconstruction",
            })
    void shouldNameFileLineMemberAndValueWhenALineIsWrong(String right, String wrong, String named) throws IOException {
        Path file = Files.writeString(directory.resolve("bad.jsonl"), SOLVE + "\n" + SOLVE.replace(right, wrong));

        Outcome outcome = CommandRig.runPlain("", "assess", file.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err())
                .contains("fermata assess: " + file + ", line 2: ")
                .contains(named);
    }

    @Test
    void shouldSayWhatIsMissingWhenItCannotCrossValidate() {
        assertThat(CommandRig.runPlain(SOLVE, "assess", "-", "--cross-validate"))
                .satisfies(outcome -> {
                    assertThat(outcome.code()).isEqualTo(2);
                    assertThat(outcome.err()).contains("of one group");
                });
        assertThat(CommandRig.runPlain(SOLVE, "assess", "-", "--folds", "3").err())
                .contains("--cross-validate");
        assertThat(CommandRig.runPlain("", "assess", "-").err()).contains("standard input, line 1");
    }

    @Test
    void shouldGiveTheSameModelWhenLearningAgain() throws IOException {
        Path first = directory.resolve("first");
        Path second = directory.resolve("second");

        CommandRig.runPlain(some(3, true), "learn", "-", "--out", first.toString());
        CommandRig.runPlain(some(3, true), "learn", "-", "--out", second.toString());

        for (String name : List.of("weights.txt", "sequences.txt", "markov-weights.txt")) {
            assertThat(second.resolve(name)).isNotEmptyFile().hasSameTextualContentAs(first.resolve(name));
        }
    }

    /** A minute of learning. */
    @Test
    @Tag("proof")
    void shouldReproduceTheShippedModelWhenLearningFromThePublicSolves() throws IOException {
        Outcome outcome = CommandRig.runPlain(String.join("\n", written), "learn", "-", "--out", directory.toString());

        assertThat(outcome.code()).isZero();
        assertThat(directory.resolve("weights.txt"))
                .content()
                .isEqualTo(HoldModel.shipped().weights().print());
        assertThat(directory.resolve("sequences.txt"))
                .content()
                .isEqualTo(HoldModel.shipped().book().print());
        assertThat(directory.resolve("markov-weights.txt"))
                .content()
                .isEqualTo(HoldModel.markov().weights().print());
    }

    /** The tables of the reference are what many know; the model was taught no other sequences before it learned. */
    @Test
    void shouldKnowTheSequencesOfTheReferenceTables() throws IOException {
        List<String> tables = new ArrayList<>();
        for (String table : List.of("oll_cases.csv", "pll_cases.csv")) {
            try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/reference/" + table)) {
                new String(in.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .skip(1)
                        .forEach(line -> tables.add(line.split(",")[1]));
            }
        }

        assertThat(HoldFiles.commonSequences().print())
                .isEqualTo(SequenceBook.parse(String.join("\n", tables)).print());
        assertThat(HoldFiles.modelId()).matches("[0-9a-f]{12}");
    }

    /** Only new solves tell which of the two learned models is better: {@code assess --cross-validate} reads those. */
    @Test
    void shouldLearnFarMoreThanToHoldStill() {
        JsonNode all =
                CommandRig.runPlain(some(10, false), "assess", "-", "--json").json();
        double still = all.get("never_rotates").get("hold_share").doubleValue();

        assertThat(all.get("hold_share").doubleValue()).isGreaterThan(still + 0.5);
        assertThat(all.get("markov").get("hold_share").doubleValue()).isGreaterThan(still + 0.5);
        assertThat(all.get("never_rotates").get("rotations").get("recall").doubleValue())
                .isCloseTo(0, within(0.0));
    }
}
