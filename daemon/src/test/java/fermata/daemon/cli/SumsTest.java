package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.cli.text.Seconds;
import fermata.daemon.demo.Rehearsal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Six evenings within a month, two of them in the last week; on the last one also two hands. */
class SumsTest {
    private static final String LAST = "2026-11-24";

    @TempDir
    static Path directory;

    private static CommandRig rig;

    @BeforeAll
    static void bringEveningsIn() throws IOException {
        rig = new CommandRig(directory.resolve("home"));
        int seed = 5;
        for (String day : List.of("2026-11-01", "2026-11-04", "2026-11-08", "2026-11-12", "2026-11-20", LAST)) {
            bringIn(day + "T19:00:00Z", "left", 7, seed++);
        }
        bringIn(LAST + "T21:00:00Z", "two", 2, seed);
    }

    private static void bringIn(String startedAt, String hand, int solves, int seed) throws IOException {
        List<String> lines = new ArrayList<>(Rehearsal.evening(solves, seed).lines());
        String header = lines.get(0).replaceFirst("\"hand\":\"[a-z]+\"", "\"hand\":\"" + hand + "\"");
        lines.set(
                0,
                header.replaceFirst(
                        "\"hand\"", "\"started_at\":\"" + startedAt + "\",\"zone\":\"Europe/Oslo\",\"hand\""));
        Path file = directory.resolve(seed + ".jsonl");
        Files.write(file, lines);
        Outcome imported = rig.run("import", file.toString());
        assertThat(imported.code()).as(imported.err()).isZero();
    }

    @Test
    void shouldPrintTheShapesThatTheDocumentPromises() throws IOException {
        assertThat(DocumentedShapes.found(night("night"))).isEqualTo(DocumentedShapes.promised("night"));
        assertThat(DocumentedShapes.found(rig.run("cases", "--json").json()))
                .isEqualTo(DocumentedShapes.promised("cases"));
    }

    @Test
    void shouldSumUpTheNightTheWeekAndAllNights() {
        JsonNode all = night("all");
        JsonNode week = night("week");

        assertThat(night("night").get("nights").intValue()).isEqualTo(1);
        assertThat(week.get("nights").intValue()).isEqualTo(2);
        assertThat(week.get("from").stringValue()).isEqualTo("2026-11-18");
        assertThat(all.get("nights").intValue()).isEqualTo(6);
        assertThat(all.get("from").stringValue()).isEqualTo("2026-11-01");
        assertThat(all.get("solves").intValue()).isEqualTo(solved("left", "2026-11-01"));
        assertThat(week.get("solves").intValue()).isEqualTo(solved("left", "2026-11-18"));
        assertThat(rig.run("night", "2026-11-08", "--over", "all", "--json")
                        .json()
                        .get("nights")
                        .intValue())
                .isEqualTo(3);
    }

    private static int solved(String hand, String from) {
        int solved = 0;
        for (JsonNode solve : rig.run("solves", "--json").json().get("solves")) {
            boolean isCounted = solve.get("hand").stringValue().equals(hand)
                    && solve.get("day").stringValue().compareTo(from) >= 0;
            solved += isCounted && solve.get("solved").booleanValue() ? 1 : 0;
        }
        return solved;
    }

    @Test
    void shouldLookBackFourWeeksForTrendsAndKeepOtherHandsApart() {
        JsonNode night = night("night");

        assertThat(night.get("trends").get(0).get("figure").stringValue()).isEqualTo("time");
        assertThat(night.get("trends").get(0).get("nights").intValue()).isEqualTo(6);
        assertThat(night.get("series").get("hand").stringValue()).isEqualTo("left");
        assertThat(night.get("other_series"))
                .anySatisfy(other -> assertThat(other.get("hand").stringValue()).isEqualTo("two"));
        assertThat(night.get("load").get("advice").get(0).stringValue()).contains("Pain", "clinician");
    }

    @Test
    void shouldSayOfEachPlaceWhatItsFiguresSay() {
        JsonNode all = night("all");

        assertThat(all.get("hotspots")).isNotEmpty().allSatisfy(spot -> {
            String seconds = Seconds.ofFigure(spot.get("per_solve_us").longValue());
            assertThat(spot.get("sentence").stringValue())
                    .contains(seconds + " s a solve")
                    .contains(spot.get("occurrences").intValue() + " clear rests");
            assertThat(spot.get("occurrences").intValue()).isGreaterThanOrEqualTo(5);
            assertThat(spot.get("low_us").longValue())
                    .isLessThanOrEqualTo(spot.get("high_us").longValue());
        });
        assertThat(night("night").get("too_few"))
                .isNotEmpty()
                .allSatisfy(few -> assertThat(few.get("sentence").stringValue())
                        .endsWith("too few to say (" + few.get("occurrences").intValue() + ")."));
        JsonNode spot = all.get("hotspots").get(0);
        JsonNode example = spot.get("examples").get(0);
        JsonNode solve =
                rig.run("show", example.get("id").stringValue(), "--json").json();
        Set<Long> begins = new HashSet<>();
        solve.get("rests").forEach(rest -> begins.add(rest.get("start_us").longValue()));
        assertThat(begins).contains(example.get("at_us").longValue());
    }

    @Test
    void shouldShowEachCaseWithItsPictureDearestFirst() {
        JsonNode cases = rig.run("cases", "--json").json();

        long cost = Long.MAX_VALUE;
        for (JsonNode row : cases.get("cases")) {
            assertThat(row.get("few").booleanValue()).isEqualTo(row.get("met").intValue() < 5);
            assertThat(row.get("picture").stringValue()).hasSize(54).matches("[URFDLB.]+");
            if (!row.get("few").booleanValue()) {
                assertThat(row.get("cost_us").longValue()).isLessThanOrEqualTo(cost);
                cost = row.get("cost_us").longValue();
            }
        }
        assertThat(cases.get("solves").intValue())
                .isPositive()
                .isLessThanOrEqualTo(night("all").get("solves").intValue());
    }

    @Test
    void shouldPrintTextWithinEightyColumns() {
        List<Outcome> outcomes = new ArrayList<>();
        for (String over : List.of("night", "week", "all")) {
            outcomes.add(rig.run("night", "--over", over));
            outcomes.add(rig.run("cases", "--over", over));
        }

        assertThat(outcomes).allSatisfy(outcome -> {
            assertThat(outcome.code()).as(outcome.err()).isZero();
            assertThat(outcome.lines())
                    .isNotEmpty()
                    .allSatisfy(line ->
                            assertThat(line).hasSizeLessThanOrEqualTo(80).doesNotEndWith(" "));
        });
        assertThat(outcomes.get(0).out()).contains("Not compared with these", "two hands", "clinician");
        assertThat(outcomes.get(5).out()).containsPattern("Usual\\s+are\\s+orient\\s+\\d+\\.\\d\\d,\\s+pair\\s+\\d");
        assertThat(outcomes.get(4).out()).containsPattern("clear\\s+rests\\.\\s+See\\s+\\d+-\\d+,");
    }

    @Test
    void shouldWriteThePageOfAWeekWithItsNightsAndNoOthers() throws IOException {
        Path page = directory.resolve("week.html");

        assertThat(rig.run("night", "--over", "week", "--out", page.toString()).code())
                .isZero();

        assertThat(Files.readString(page))
                .contains("/api/nights/" + LAST + "?over=week", "/api/solves?day=2026-11-20", "/api/solves?day=" + LAST)
                .doesNotContain("2026-11-12");
    }

    @Test
    void shouldSayWhichRangesThereAre() {
        assertThat(rig.run("night", "--over", "month")).satisfies(outcome -> {
            assertThat(outcome.code()).isEqualTo(2);
            assertThat(outcome.err()).contains("--over", "\"month\" is not night, week or all");
        });
        assertThat(new CommandRig(directory.resolve("empty")).run("cases").err())
                .contains("there is no practice in");
    }

    private static JsonNode night(String over) {
        Outcome outcome = rig.run("night", LAST, "--over", over, "--json");
        assertThat(outcome.code()).as(outcome.err()).isZero();
        return outcome.json();
    }
}
