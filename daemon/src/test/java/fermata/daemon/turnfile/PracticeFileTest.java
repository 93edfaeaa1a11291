package fermata.daemon.turnfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.Json;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class PracticeFileTest {
    private static final String HEADER =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\"}";
    private static final String TWISTED = "UUUUUUUURFRRRRRRRRFFUFFFFFFDDDDDDDDDLLLLLLLLLBBBBBBBBB";

    @Test
    void shouldReadEveryKindOfEvent() {
        TurnStream stream = only(
                HEADER,
                "{\"mark\":\"scramble\",\"text\":\"R U F2\",\"at\":0}",
                "{\"turn\":\"R'\",\"at\":1500000}",
                "{\"turn\":\"U2\",\"at\":1700000,\"source\":\"repaired\"}",
                "{\"gap\":3,\"at\":1800000}",
                "{\"gap\":\"unknown\",\"at\":1800000}",
                "{\"snapshot\":\"" + CubeState.SOLVED + "\",\"at\":1900000}",
                "{\"reference\":\"" + CubeState.SOLVED.apply(Turn.parse("R")) + "\",\"at\":1900000}",
                "{\"verdict\":\"set_aside\",\"first_turn\":0,\"at\":2000000}");

        assertThat(stream.header().clock()).isEqualTo(StreamClock.DEVICE);
        assertThat(stream.header().origin().hand()).isEqualTo(Hand.LEFT);
        assertThat(stream.events()).hasSize(8);
        assertThat(stream.events().get(1)).isInstanceOfSatisfying(Event.Turned.class, turned -> {
            assertThat(turned.turn()).isEqualTo(Turn.parse("R'"));
            assertThat(turned.atMicros()).isEqualTo(1_500_000);
        });
        assertThat(stream.events().get(4))
                .isInstanceOfSatisfying(
                        Event.Gap.class, gap -> assertThat(gap.turnsLost()).isEqualTo(Event.Gap.UNKNOWN_COUNT));
    }

    @Test
    void shouldWriteTheLinesThatItRead() {
        String text = String.join(
                "\n",
                "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\",\"scramble\":\"R U\","
                        + "\"started_at\":\"2026-11-24T20:04:05Z\",\"zone\":\"Europe/Oslo\","
                        + "\"truth\":{\"rests\":[1.50]}}",
                "{\"mark\":\"note\",\"text\":\"swell from port\",\"at\":0}",
                "{\"turn\":\"R'\",\"at\":1500000}",
                "{\"turn\":\"U2\",\"source\":\"repaired\",\"at\":1700000}",
                "{\"orientation\":[0.7071,0.7071,0.0,-1.0E-4],\"at\":1750000}",
                "{\"gap\":3,\"at\":1800000}",
                "{\"gap\":\"unknown\",\"at\":1800000}",
                "{\"snapshot\":\"" + CubeState.SOLVED + "\",\"at\":1900000}",
                "{\"reference\":\"" + CubeState.SOLVED + "\",\"at\":1900000}",
                "{\"verdict\":\"back_in\",\"first_turn\":0,\"at\":2000000}");

        assertThat(String.join("\n", only(text.split("\n")).lines())).isEqualTo(text);
    }

    @Test
    void shouldRefuseAnOrientationWhereThereIsNoClock() {
        String header = "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}";

        assertThatThrownBy(() -> only(header, "{\"orientation\":[1,0,0,0]}"))
                .isInstanceOf(BadLineException.class)
                .hasMessageContaining("the header says that there is no clock");
    }

    @Test
    void shouldReadSeveralStreamsFromOneFile() {
        List<TurnStream> streams = PracticeFile.read(
                "two.jsonl",
                bytes(HEADER, "{\"turn\":\"R\",\"at\":1}", "", HEADER, "{\"turn\":\"U\",\"at\":0}", HEADER));

        assertThat(streams).extracting(stream -> stream.events().size()).containsExactly(1, 1, 0);
    }

    @Test
    void shouldReadNoFurtherThanTheStreamThatIsAskedFor() throws IOException {
        String night = HEADER + "\n" + "{\"turn\":\"R\",\"at\":1}\n".repeat(2_000);
        ByteArrayInputStream in = new ByteArrayInputStream(bytes(night.repeat(20)));
        int most = night.length() + 16_384;
        PracticeFile nights = new PracticeFile("nights.jsonl", in);

        for (int read = 1; read <= 20; read++) {
            int before = in.available();
            assertThat(nights.next().events()).hasSize(2_000);
            assertThat(before - in.available()).as("night %d", read).isLessThan(most);
        }
        assertThat(nights.hasNext()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "{'turn':'Q','at':2}| turn is \"\"Q\"\"| Q",
                "{'turn':'R3','at':2}| turn is \"\"R3\"\"| nothing, 2 or an apostrophe",
                "{'turn':5,'at':2}| turn is 5| a text",
                "{'turn':'R'}| at is missing| microseconds",
                "{'turn':'R','at':-1}| at is -1| a whole number from 0",
                "{'turn':'R','at':1.5}| at is 1.5| a whole number from 0",
                "{'turn':'R','at':0}| at is 0| not before 1",
                "{'turn':'R','at':9223372036854775807}| at is 9223372036854775807| a hundred years",
                "{'turn':'R','at':2,'source':'guessed'}| source is \"\"guessed\"\"| one of heard, repaired",
                "{'turn':'R','gap':2,'at':2}| is {| exactly one of the members turn, gap",
                "{'turns':'R','at':2}| is {| exactly one of the members turn, gap",
                "{'gap':0,'at':2}| gap is 0| from 1",
                "{'snapshot':'UUU','at':2}| snapshot is \"\"UUU\"\"| 54 letters",
                "{'snapshot':'TWISTED','at':2}| snapshot is| a corner was twisted by hand",
                "{'mark':'scramble','text':'R Q','at':2}| text is \"\"R Q\"\"| column 3",
                "{'verdict':'fine','first_turn':1,'at':2}| verdict is \"\"fine\"\"| one of solved, abandoned",
                "{'orientation':[1,0,0],'at':2}| orientation is [1,0,0]| four numbers w, x, y, z",
                "{'orientation':[1,1,0,0],'at':2}| orientation is [1,1,0,0]| the squared norm 2.0, not 1",
                "{'orientation':'up','at':2}| orientation is| four numbers",
                "{'orientation':[1,0,0,0]}| at is missing| microseconds",
                "{'turn':'R','at':2| is {| a JSON object on one line",
                "{'turn':'R','at':2} {'turn':'U','at':3}| is {| a JSON object on one line (something follows it)",
                "[1]| is [1]| a JSON object on one line",
                "nonsense| is nonsense| a JSON object on one line",
                "{'turn':'R','turn':'U','at':2}| is {| Duplicate",
            })
    void shouldNameLineFieldAndValueWhenALineIsWrong(String line, String value, String expectation) {
        String wrong = line.replace('\'', '"').replace("TWISTED", TWISTED);

        assertThatThrownBy(() -> PracticeFile.read("evening.jsonl", bytes(HEADER, "{\"turn\":\"R\",\"at\":1}", wrong)))
                .isInstanceOf(BadLineException.class)
                .hasMessageStartingWith("evening.jsonl, line 3: ")
                .hasMessageContaining(value.replace("\"\"", "\""))
                .hasMessageContaining(expectation);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "{'format':'turns','version':1,'clock':'none','hand':'left'}| format is \"\"turns\"\"",
                "{'format':'turn-stream','version':2,'clock':'none','hand':'left'}| version is 2",
                "{'format':'turn-stream','version':1,'clock':'sun','hand':'left'}| clock is \"\"sun\"\"",
                "{'format':'turn-stream','version':1,'clock':'none','hand':'third'}| hand is \"\"third\"\"",
                "{'format':'turn-stream','version':1,'clock':'none'}| hand is missing",
                "{'format':'turn-stream','version':1,'clock':'none','hand':'left','scramble':'R Z'}| scramble is",
                "{'format':'turn-stream','version':1,'clock':'none','hand':'left','started_at':'noon'}| started_at is",
                "{'format':'turn-stream','version':1,'clock':'none','hand':'left',"
                        + "'started_at':'+1000000000-12-31T23:59:59Z'}| started_at is",
                "{'format':'turn-stream','version':1,'clock':'none','hand':'left',"
                        + "'started_at':'1899-12-31T23:59:59Z'}| started_at is",
                "{'scramble':'R','lines':[],'hands':'one'}| lines is []",
                "{'scramble':'R','lines':[{'moves':'R Q','stage':'cross'}],'hands':'one'}| lines[0].moves is",
                "{'scramble':'R','lines':[{'moves':'R'}],'hands':'one'}| lines[0].stage is missing",
                "{'scramble':'R','lines':[{'moves':'x','stage':'inspection'}],'hands':'one'}| lines is",
                "{'scramble':'R','lines':[{'moves':'R','stage':'cross'}],'hands':'three'}| hands is \"\"three\"\"",
                "{'cube':1}| is {",
            })
    void shouldNameTheFieldWhenTheFirstLineIsWrong(String line, String value) {
        assertThatThrownBy(() -> PracticeFile.read("evening.jsonl", bytes(line.replace('\'', '"'))))
                .isInstanceOf(BadLineException.class)
                .hasMessageStartingWith("evening.jsonl, line 1: " + value.replace("\"\"", "\""));
    }

    @Test
    void shouldRefuseTimesWhenThereIsNoClock() {
        String header = HEADER.replace("device", "none");

        assertThatThrownBy(() -> PracticeFile.read("evening.jsonl", bytes(header, "{\"turn\":\"R\",\"at\":1}")))
                .hasMessageContaining("line 2: at is 1, expected no such member");
    }

    @Test
    void shouldRefuseAFileThatIsNotUtf8OrEmpty() {
        assertThatThrownBy(() -> PracticeFile.read("evening.jsonl", new byte[] {'{', (byte) 0xFF, '}'}))
                .hasMessageContaining("line 1: is not UTF-8");
        assertThatThrownBy(() -> PracticeFile.read("evening.jsonl", new byte[] {'\n', ' '}))
                .hasMessageContaining("expected a turn stream's header or a reconstruction");
    }

    @Test
    void shouldEndEveryPublicSolveSolvedAndKeepItsHoldsAsTruth() throws IOException {
        List<TurnStream> solves = PracticeFile.read("solves.jsonl", publicSolves());

        assertThat(solves).hasSizeGreaterThan(100).allSatisfy(solve -> {
            assertThat(solve.events().get(0)).isInstanceOf(Event.Snapshot.class);
            CubeState state = ((Event.Snapshot) solve.events().get(0)).state();
            for (Event event : solve.events().subList(1, solve.events().size())) {
                state = state.apply(((Event.Turned) event).turn());
            }
            assertThat(state.isSolved()).as(solve.header().truth()).isTrue();
            JsonNode truth = Json.read(solve.header().truth());
            assertThat(truth.get("holds").get(0).get("turn").intValue()).isZero();
            assertThat(truth.get("stages")
                            .get(truth.get("stages").size() - 1)
                            .get("to")
                            .intValue())
                    .isEqualTo(solve.events().size() - 1);
        });
    }

    @Test
    void shouldKeepTheHoldAsItIsStatedTurnByTurn() {
        TurnStream solve = only("{\"id\":\"x1\",\"hands\":\"one\",\"method\":\"CFOP\",\"scramble\":\"R' U'\","
                + "\"lines\":[{\"moves\":\"y\",\"stage\":\"inspection\"},{\"moves\":\"r B\",\"stage\":\"cross\"}]}");

        JsonNode truth = Json.read(solve.header().truth());
        // Worked out by hand: y brings R to the front; r is felt as the turn of the face opposite and takes the cube by
        // x.
        assertThat(truth.get("holds").toString())
                .isEqualTo("[{\"turn\":0,\"hold\":\"UR\"},{\"turn\":1,\"hold\":\"RD\"}]");
        assertThat(truth.get("stages").get(1).toString()).isEqualTo("{\"stage\":\"cross\",\"from\":0,\"to\":2}");
    }

    static byte[] publicSolves() throws IOException {
        try (InputStream in = PracticeFileTest.class.getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            return in.readAllBytes();
        }
    }

    private static TurnStream only(String... lines) {
        List<TurnStream> streams = PracticeFile.read("evening.jsonl", bytes(lines));
        assertThat(streams).hasSize(1);
        return streams.get(0);
    }

    private static byte[] bytes(String... lines) {
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }
}
