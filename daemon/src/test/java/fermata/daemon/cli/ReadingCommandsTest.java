package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.json.Json;
import fermata.daemon.turnfile.TurnStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Reads one evening of eight solves, one of them with turns lost, with every command that reads. */
class ReadingCommandsTest {
    private static final int LOST_TURN = 10;

    @TempDir
    static Path directory;

    private static CommandRig rig;
    private static List<String> ids;

    @BeforeAll
    static void bringAnEveningIn() throws IOException {
        rig = new CommandRig(directory.resolve("home"));
        TurnStream evening = Rehearsal.evening(8, 10);
        List<String> lines = new ArrayList<>(evening.lines());
        lines.set(
                0,
                lines.get(0)
                        .replace(
                                "\"hand\"",
                                "\"started_at\":\"2026-11-24T21:30:00Z\",\"zone\":\"Europe/Oslo\",\"hand\""));
        // A turn of the last attempt is lost, the cube never says where it is, and nobody announced its scramble.
        int lost = lineOfTurn(evening, LOST_TURN);
        lines.set(lost, lines.get(lost).replaceFirst("\"turn\":\"[^\"]+\"", "\"gap\":1"));
        Path file = directory.resolve("evening.jsonl");
        Files.write(file, lines);
        Files.write(file, lines, StandardOpenOption.APPEND);
        Outcome imported = rig.run("import", "--json", file.toString());
        assertThat(imported.err()).isEmpty();
        assertThat(DocumentedShapes.found(imported.json())).isEqualTo(DocumentedShapes.promised("import"));
        ids = new ArrayList<>();
        rig.run("solves", "--json")
                .json()
                .get("solves")
                .forEach(solve -> ids.add(solve.get("id").stringValue()));
    }

    private static int lineOfTurn(TurnStream evening, int turn) {
        JsonNode attempts = Json.read(evening.header().truth()).get("attempts");
        JsonNode last = attempts.get(attempts.size() - 1);
        JsonNode span = last.get("solve").get("turns");
        int raw = span.get("from").intValue() + turn;
        int seen = -1;
        for (int i = 0; i < evening.events().size(); i++) {
            seen += evening.events().get(i) instanceof Event.Turned ? 1 : 0;
            if (seen == raw) {
                return i + 1;
            }
        }
        throw new IllegalStateException("no turn " + raw);
    }

    @Test
    void shouldReadASolveByAnotherMargin() {
        String id =
                ids.stream().filter(ReadingCommandsTest::isSolved).findFirst().orElseThrow();
        JsonNode usual = rig.run("show", id, "--json").json();
        JsonNode same = rig.run("show", id, "--json", "--margin", "0.3").json();
        JsonNode strict = rig.run("show", id, "--json", "--margin", "9.5").json();

        assertThat(same).isEqualTo(usual);
        assertThat(usual.get("looking_model").stringValue()).contains("in time from 0.3 s before");
        assertThat(strict.get("looking_model").stringValue()).contains("in time from 9.5 s before");
        assertThat(usual.get("looking"))
                .anyMatch(finding -> !finding.get("known_us").isNull());
        assertThat(strict.get("looking"))
                .hasSameSizeAs(usual.get("looking"))
                .allMatch(finding -> finding.get("known_us").isNull());
        assertThat(rig.run("show", id, "--json").json()).isEqualTo(usual);
        assertThat(rig.run("show", id, "--margin", "-1").err())
                .isEqualTo("fermata show: --margin -1 is not in 0..10 seconds\n");
    }

    @Test
    void shouldPrintTheShapesThatTheDocumentPromises() throws IOException {
        Set<String> shown = new TreeSet<>();
        for (String id : ids) {
            shown.addAll(DocumentedShapes.found(rig.run("show", id, "--json").json()));
        }

        assertThat(shown).isEqualTo(DocumentedShapes.promised("show"));
        assertThat(DocumentedShapes.found(rig.run("solves", "--json").json()))
                .isEqualTo(DocumentedShapes.promised("solves"));
    }

    @Test
    void shouldTellRegripsWithTheirProbabilitiesAndTheirCount() {
        JsonNode shown = rig.run("show", ids.get(0), "--json").json();
        double named = 0;
        for (JsonNode regrip : shown.get("regrips")) {
            named += regrip.get("p").doubleValue();
            assertThat(regrip.get("p").doubleValue()).isBetween(0.05, 1.0);
            assertThat(regrip.get("before_turn").intValue())
                    .isBetween(1, shown.get("turns").size() - 1);
        }
        JsonNode count = shown.get("regrip_count");

        // Those that are not named have less than 0.05 each.
        assertThat(count.get("expected").doubleValue())
                .isBetween(named - 0.1, named + 0.05 * shown.get("turns").size());
        assertThat(count.get("low").intValue())
                .isLessThanOrEqualTo((int) count.get("expected").doubleValue());
        assertThat(count.get("high").intValue())
                .isGreaterThanOrEqualTo((int) count.get("expected").doubleValue());
        assertThat(rig.run("show", ids.get(0)).out())
                .contains("  regrips    ")
                .contains(" ,")
                .contains("a regrip, and how probable it is");
        assertThat(rig.run("show", ids.get(0), "--core").out())
                .doesNotContain("  regrips    ")
                .doesNotContain("a regrip, and how probable it is");
    }

    @Test
    void shouldNumberTheAttemptsOfTheDayInBothDocuments() {
        JsonNode solves = rig.run("solves", "--json").json().get("solves");

        for (int i = 0; i < solves.size(); i++) {
            JsonNode solve = solves.get(i);
            assertThat(solve.get("number").intValue()).isEqualTo(i + 1);
            JsonNode shown =
                    rig.run("show", solve.get("id").stringValue(), "--json").json();
            assertThat(shown.get("number")).isEqualTo(solve.get("number"));
            assertThat(shown.get("time_us")).isEqualTo(solve.get("time_us"));
            assertThat(shown.get("turns").size()).isEqualTo(solve.get("turns").intValue());
        }
    }

    @Test
    void shouldAgreeBetweenTheNightAndItsSolves() {
        JsonNode night = rig.run("night", "2026-11-24", "--json").json();
        List<Long> times = new ArrayList<>();
        rig.run("solves", "2026-11-24", "--json").json().get("solves").forEach(solve -> {
            if (solve.get("solved").booleanValue()) {
                times.add(solve.get("time_us").longValue());
            }
        });

        assertThat(night.get("solves").intValue()).isEqualTo(times.size());
        assertThat(night.get("best_us").longValue())
                .isEqualTo(times.stream().min(Long::compare).orElseThrow());
    }

    @Test
    void shouldCountWhatIsDoneAfterMidnightToTheEveningBefore() {
        // The stream begins at 22:30 in Oslo; nothing of the evening lies on the 25th.
        JsonNode solves = rig.run("solves", "--json").json().get("solves");

        assertThat(solves)
                .allSatisfy(solve -> assertThat(solve.get("day").stringValue()).isEqualTo("2026-11-24"));
        assertThat(rig.run("night", "2026-11-25").code()).isEqualTo(2);
    }

    @Test
    void shouldPrintTextWithinEightyColumns() {
        List<Outcome> outcomes = new ArrayList<>(List.of(rig.run("solves"), rig.run("night")));
        ids.forEach(id -> outcomes.add(rig.run("show", id)));
        ids.forEach(id -> outcomes.add(rig.run("show", id, "--turn", "2")));

        assertThat(outcomes).allSatisfy(outcome -> {
            assertThat(outcome.code()).isZero();
            assertThat(outcome.lines())
                    .isNotEmpty()
                    .allSatisfy(line ->
                            assertThat(line).hasSizeLessThanOrEqualTo(80).doesNotEndWith(" "));
        });
    }

    @Test
    void shouldShowEveryTurnAndSayWhereSomeWereLost() {
        JsonNode shown = rig.run("show", ids.get(ids.size() - 1), "--json").json();
        String text = rig.run("show", ids.get(ids.size() - 1)).out();

        assertThat(shown.get("gaps").get(0).get("after_turn").intValue()).isEqualTo(LOST_TURN - 1);
        assertThat(shown.get("gaps").get(0).get("lost").intValue()).isEqualTo(1);
        assertThat(text).contains("[1 lost]").contains("turns that were not heard");
    }

    @Test
    void shouldShowTheCubeSolvedAfterTheLastTurn() {
        String id =
                ids.stream().filter(ReadingCommandsTest::isSolved).findFirst().orElseThrow();
        JsonNode shown = rig.run("show", id, "--json").json();
        String turns = Integer.toString(shown.get("turns").size());

        assertThat(rig.run("show", id, "--turn", turns).lines())
                .containsSequence(
                        "         U U U",
                        "         U U U",
                        "         U U U",
                        "  L L L  F F F  R R R  B B B",
                        "  L L L  F F F  R R R  B B B",
                        "  L L L  F F F  R R R  B B B",
                        "         D D D",
                        "         D D D",
                        "         D D D");
        JsonNode start = rig.run("show", id, "--turn", "0", "--json").json();
        assertThat(start.get("facelets")).isEqualTo(shown.get("start_facelets"));
    }

    private static boolean isSolved(String id) {
        return rig.run("show", id, "--json").json().get("solved").booleanValue();
    }

    @Test
    void shouldSayWhatToDoWhenAskedForWhatIsNotThere() {
        assertThat(rig.run("show", "9-9")).satisfies(outcome -> {
            assertThat(outcome.code()).isEqualTo(2);
            assertThat(outcome.err()).contains("no solve \"9-9\"").contains("fermata solves");
        });
        assertThat(rig.run("show", ids.get(0), "--turn", "900").err()).contains("--turn 900 is not in 0..");
        assertThat(rig.run("night", "2026-01-01").err()).contains("practice days are 2026-11-24");
        assertThat(rig.run("solves", "2026-01-01").code()).isEqualTo(2);
        assertThat(rig.run("night", "tonight").err()).contains("\"tonight\" is not a date such as");
        assertThat(rig.run("show", ids.get(0), "--turn", "x").code()).isEqualTo(2);
        assertThat(rig.run("solves", "--jason").err()).contains("--jason").contains("--json");
        assertThat(rig.run("export", "7").err()).contains("no capture 7 among 1 capture");
    }
}
