package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.live.HandDriven;
import fermata.daemon.live.LiveBoard;
import fermata.daemon.live.LiveCapture;
import fermata.daemon.live.Scramble;
import fermata.daemon.live.TellingJournal;
import fermata.daemon.practice.Practice;
import fermata.daemon.recording.Recording;
import fermata.daemon.recording.RecordingPlan;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An evening from the virtual cube over a real bus into a real store, on the page, with the link cut meanwhile. */
@Timeout(120)
class LiveEveningTest {
    private static final Scramble SCRAMBLE =
            HandDriven.scramble("D2 F' U2 L B' R2 F D' L2 U R' B2 D F2 U' L' B R U2 F' D");
    private static final Scramble NEXT = HandDriven.scramble("R U F");
    private static final long STEP_MICROS = 400_000;

    @TempDir
    private Path home;

    @Test
    void shouldShowTheEveningThroughALossOfTheLinkAndKeepTheScramble() throws Exception {
        MonotonicClock clock = MonotonicClock.scaled(2);
        Queue<Scramble> scrambles = new ConcurrentLinkedQueue<>(List.of(SCRAMBLE, NEXT));
        try (Store store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
                LiveBoard board = LiveBoard.start(() -> Optional.ofNullable(scrambles.poll()), clock);
                PageServer server = PageServer.start(new Practice(store), board, Audience.thisMachine(), 0);
                Browser browser = new Browser()) {
            browser.as(390, 844, "light", "reduce").open(server.url() + "/", "h1.status");
            remember(browser);
            String result = play(store, board, clock, browser);

            assertThat(remembered(browser, "titles")).containsSubsequence("Listening", "Not listening", "Listening");
            assertThat(remembered(browser, "tasks"))
                    .containsSubsequence("The next scramble", "Scrambled. The first turn begins the solve.", "Solving");
            Practice practice = new Practice(store);
            assertThat(practice.solves().solves()).singleElement().satisfies(solve -> {
                assertThat(solve.solved()).isTrue();
                // Page and analysis must agree on whether the cut cost turns.
                assertThat(result).contains(solve.lost() > 0 ? "some were lost" : "21 turns.");
                assertThat(practice.solve(solve.id())
                                .orElseThrow()
                                .scrambleEnd()
                                .known())
                        .isEqualTo("announced_state");
            });
        }
    }

    /** Plays the script, cuts the link while the page says that the cube is being solved; gives what it says after. */
    private static String play(Store store, LiveBoard board, MonotonicClock clock, Browser browser) {
        try (VirtualCube cube = VirtualCube.start(
                VirtualCube.Setup.playing(script()), clock, new SplittableRandom(3), new BluezTemper())) {
            RecordingPlan plan = plan(cube);
            LiveCapture live = board.begin(OpenLayout.profile(), HandDriven.COOK);
            try (Recording recording = Recording.start(store, plan, clock, "", List.of(live))) {
                live.attach(recording::status, TellingJournal.of(store.captures(), recording.captureId()));
                browser.waitUntil("the solve", "return window.tasks.includes('Solving')");
                cube.bluez().dropLink(Duration.ofSeconds(3));
                browser.waitUntil(
                        "the next scramble",
                        "return window.tasks.includes('Solving') && window.tasks.at(-1) === 'The next scramble'");
                return browser.one(".result").getText();
            }
        }
    }

    private static void remember(Browser browser) {
        browser.driver()
                .executeScript("window.titles = []; window.tasks = [];"
                        + "const note = (list, words) => { if (list.at(-1) !== words) list.push(words); };"
                        + "const look = () => { note(window.titles, document.querySelector('h1').textContent);"
                        + " note(window.tasks, document.querySelector('.task').textContent); };"
                        + "new MutationObserver(look).observe(document.querySelector('main'),"
                        + " { subtree: true, childList: true, characterData: true });");
    }

    @SuppressWarnings("unchecked")
    private static List<String> remembered(Browser browser, String what) {
        return (List<String>) browser.driver().executeScript("return window." + what);
    }

    private static List<ScriptedTurn> script() {
        List<Turn> solution =
                new ArrayList<>(SCRAMBLE.turns().stream().map(Turn::inverse).toList());
        Collections.reverse(solution);
        List<ScriptedTurn> script = new ArrayList<>();
        long at = 1_000_000;
        for (Turn turn : SCRAMBLE.turns()) {
            script.add(new ScriptedTurn(at += STEP_MICROS, turn));
        }
        at += 3_000_000;
        for (Turn turn : solution) {
            script.add(new ScriptedTurn(at += STEP_MICROS, turn));
        }
        return script;
    }

    private static RecordingPlan plan(VirtualCube cube) {
        return new RecordingPlan(
                cube.busAddress(),
                OpenLayout.profile(),
                OpenLayout.profileText(),
                new Origin("galley cube", "cook", Hand.LEFT),
                Instant.parse("2026-11-24T20:00:00Z"),
                ZoneOffset.UTC,
                BluetoothCapture.Settings.usual());
    }
}
