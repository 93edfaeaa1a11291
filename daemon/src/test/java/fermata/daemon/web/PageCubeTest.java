package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The cube that the pages compute is the cube that the decoder computes. */
class PageCubeTest {
    private static PageServer server;
    private static Browser browser;

    @BeforeAll
    static void open() {
        server = PageServer.start(RehearsedPractice.empty(), 0);
        browser = new Browser().open(server.url() + "/", "main h1");
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        server.close();
    }

    @Test
    void shouldComputeTheDecodersStatesWhenTurnedAtRandom() {
        SplittableRandom random = new SplittableRandom(20261124);
        for (int round = 0; round < 10; round++) {
            List<String> turns = new ArrayList<>();
            List<String> expected = new ArrayList<>();
            CubeState state = CubeState.SOLVED.apply(Turn.ofIndex(random.nextInt(18)));
            String start = state.facelets();
            expected.add(start);
            for (int index = 0; index < 300; index++) {
                Turn turn = Turn.ofIndex(random.nextInt(18));
                turns.add(turn.toString());
                state = state.apply(turn);
                expected.add(state.facelets());
            }

            Object computed = browser.driver().executeAsyncScript(CubeScripts.AFTER_TURNS, start, turns);

            assertThat(computed).isEqualTo(String.join(" ", expected));
        }
    }

    @ParameterizedTest
    @EnumSource(Face.class)
    void shouldHoldTheCubeAsTheDecoderDoesWhenAFaceIsDown(Face down) {
        CubeState state = CubeState.SOLVED;
        for (String turn : "R U' F2 L B D'".split(" ")) {
            state = state.apply(Turn.parse(turn));
        }

        Object shown = browser.driver().executeAsyncScript(CubeScripts.SEEN, state.facelets(), down.name());

        assertThat(shown).isEqualTo(CubeScripts.seen(state, down.name()));
    }
}
