package fermata.daemon.demo;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.daemon.cli.CommandRig;
import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.json.Json;
import fermata.daemon.turnfile.PracticeFile;
import fermata.daemon.turnfile.TurnStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class DemoTest {
    @TempDir
    Path directory;

    @Test
    void shouldFindInTheRecordingWhatWasRehearsed() throws IOException {
        CommandRig rig = new CommandRig(directory);

        Outcome demo = rig.run("demo", "--once", "--json", "--solves", "3", "--seed", "4", "--speed", "150");

        assertThat(demo.code()).as(demo.err()).isZero();
        assertThat(demo.err()).contains("recording  100 %");
        JsonNode result = demo.json();
        Path file = directory.resolve("rehearsal.jsonl");
        TurnStream rehearsal =
                PracticeFile.read(file.toString(), Files.readAllBytes(file)).get(0);
        long turns = rehearsal.events().stream()
                .filter(Event.Turned.class::isInstance)
                .count();
        assertThat(result.get("turns").toString()).isEqualTo("{\"heard\":" + turns + ",\"repaired\":0,\"lost\":0}");
        assertThat(result.get("solves").intValue()).isEqualTo(3);
        assertThat(result.get("home").stringValue()).isEqualTo(directory.toString());
        assertAttemptsAsRehearsed(rig, Json.read(rehearsal.header().truth()).get("attempts"));
    }

    private static void assertAttemptsAsRehearsed(CommandRig rig, JsonNode truth) {
        List<String> rehearsed = new ArrayList<>();
        truth.forEach(attempt -> rehearsed.add("1-"
                + attempt.get("solve").get("turns").get("from").intValue() + " "
                + (attempt.get("solve").get("solved").booleanValue() ? "solved" : "abandoned")));
        List<String> found = new ArrayList<>();
        rig.run("solves", "--json")
                .json()
                .get("solves")
                .forEach(solve -> found.add(solve.get("id").stringValue() + " "
                        + solve.get("outcome").stringValue()));
        assertThat(found).containsExactlyElementsOf(rehearsed);
    }

    @Test
    void shouldRefuseAHomeWithSomebodysPractice() throws IOException {
        CommandRig rig = new CommandRig(directory);
        rig.runPiped(
                "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}\n{\"turn\":\"R\"}\n",
                "import",
                "-");

        Outcome demo = rig.run("demo", "--once");

        assertThat(demo.code()).isEqualTo(2);
        assertThat(demo.err()).contains("there is a practice in " + directory).contains("--home");
    }

    @Test
    void shouldNameThePortBeforeAnythingIsRecordedWhenItIsTaken() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            String port = Integer.toString(taken.getLocalPort());

            Outcome demo = new CommandRig(directory).run("demo", "--port", port);

            assertThat(demo.code()).isEqualTo(2);
            assertThat(demo.err()).contains("on port " + port).contains("--port");
            assertThat(directory.resolve("rehearsal.jsonl")).doesNotExist();
        }
    }

    @Test
    void shouldRefuseFiguresThatMakeNoEvening() {
        CommandRig rig = new CommandRig(directory);

        assertThat(rig.run("demo", "--solves", "0").err()).contains("--solves 0 is not in 1..");
        assertThat(rig.run("demo", "--speed", "0").err()).contains("--speed 0.0 is not in 1..");
    }
}
