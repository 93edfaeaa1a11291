package fermata.daemon.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig;
import fermata.daemon.pairing.PairingStep.Begun;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.Turn;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PairingDeskTest {
    private static final Clock CIVIL = Clock.fixed(Instant.parse("2026-11-24T20:04:05.5Z"), ZoneOffset.UTC);

    @TempDir
    private Path home;

    private final Hand clock = new Hand();
    private PairingDesk desk;

    @BeforeEach
    void open() {
        desk = new PairingDesk(home, clock, CIVIL, new SplittableRandom(4));
    }

    @Test
    void shouldPairWhoTurnsExactlyTheseSix() throws IOException {
        Begun begun = begin();
        assertThat(begun.turns()).hasSize(PairingDesk.TURNS);
        for (int done = 0; done < PairingDesk.TURNS; done++) {
            assertThat(desk.claim(begun.secret())).isEqualTo(new PairingStep.Waiting(done, 60));
            turn(begun.turns().get(done));
        }

        PairingStep.Paired paired = (PairingStep.Paired) desk.claim(begun.secret());
        assertThat(desk.browsers().isPaired(paired.token())).isTrue();
        assertThat(desk.browsers().list())
                .extracting(PairedBrowsers.Browser::pairedAt)
                .containsExactly("2026-11-24T20:04:05Z");
        assertThat(desk.claim(begun.secret())).isEqualTo(new PairingStep.Failed());
        Path file = home.resolve(PairedBrowsers.FILE);
        assertThat(Files.readString(file)).doesNotContain(paired.token());
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
    }

    @Test
    void shouldFailWithTheFirstOtherTurnAndMakeTheNextAttemptWaitLongerEachTime() {
        for (long expected : new long[] {5, 10, 20, 40, 80, 160, 300, 300}) {
            Begun begun = begin();
            turn(begun.turns().get(0));
            turn(begun.turns().get(1).inverse());

            assertThat(desk.claim(begun.secret())).isEqualTo(new PairingStep.Failed());
            assertThat(desk.begin("another")).isEqualTo(new PairingStep.Wait(expected));
            clock.pass(Duration.ofSeconds(expected));
        }
    }

    @Test
    void shouldFailWhenTheMinuteIsOverOrTurnsWereLost() {
        Begun late = begin();
        clock.pass(Duration.ofSeconds(61));
        late.turns().forEach(this::turn);
        assertThat(desk.claim(late.secret())).isEqualTo(new PairingStep.Failed());
        clock.pass(Duration.ofMinutes(5));

        Begun gapped = begin();
        gapped.turns().subList(0, 3).forEach(this::turn);
        desk.lost();
        gapped.turns().subList(3, 6).forEach(this::turn);
        assertThat(desk.claim(gapped.secret())).isEqualTo(new PairingStep.Failed());
        assertThat(desk.browsers().list()).isEmpty();
    }

    @Test
    void shouldTryOneBrowserAtATimeAndPairOnlyTheOneThatWasShownTheTurns() {
        Begun begun = begin();

        assertThat(desk.begin("a stranger")).isEqualTo(new PairingStep.Wait(60));
        begun.turns().forEach(this::turn);
        assertThat(desk.claim("0".repeat(64))).isEqualTo(new PairingStep.Failed());
        assertThat(desk.claim(begun.secret())).isInstanceOf(PairingStep.Paired.class);
    }

    @Test
    void shouldNotCountTurnsMadeBeforeTheAttemptBegan() {
        clock.pass(Duration.ofSeconds(10));
        Begun begun = begin();
        desk.turned(begun.turns().get(0).inverse(), clock.nanos() / 1000 - 200_000);
        begun.turns().forEach(this::turn);

        assertThat(desk.claim(begun.secret())).isInstanceOf(PairingStep.Paired.class);
    }

    @Test
    void shouldPairByTheCodeOnTheBoardAndListAndRevoke() {
        CommandRig rig = new CommandRig(home);
        Begun begun = begin();
        assertThat(rig.run("pair", "22222222").code()).isEqualTo(2);
        assertThat(desk.claim(begun.secret())).isInstanceOf(PairingStep.Waiting.class);
        assertThat(rig.run("pair", begun.code().toUpperCase(Locale.ROOT)).code())
                .isZero();

        String token = ((PairingStep.Paired) desk.claim(begun.secret())).token();
        String id = rig.run("pair", "--list", "--json")
                .json()
                .path("browsers")
                .get(0)
                .path("id")
                .asString();
        assertThat(rig.run("pair", "--list").out())
                .contains(id)
                .contains("a browser")
                .doesNotContain(token);
        assertThat(rig.run("pair", "--revoke", id).code()).isZero();
        assertThat(desk.browsers().isPaired(token)).isFalse();
        assertThat(rig.run("pair", "--revoke", id).code()).isEqualTo(2);
        // The code opens nothing a second time.
        assertThat(rig.run("pair", begun.code()).code()).isEqualTo(2);
    }

    @Test
    void shouldNotLetABrowsersNameReachTheTerminalRaw() {
        desk.browsers().pair("evil\u001b[2J" + "x".repeat(500), CIVIL);

        assertThat(desk.browsers().list().get(0).name()).startsWith("evil?[2J").hasSize(60);
    }

    @Test
    void shouldDrawTurnsThatNeverShareAnAxisWithTheOneBefore() {
        Set<List<Turn>> drawn = new HashSet<>();
        for (int round = 0; round < 200; round++) {
            PairingDesk fresh = new PairingDesk(home, clock, CIVIL, new SplittableRandom(round));
            List<Turn> turns = ((Begun) fresh.begin("a browser")).turns();
            drawn.add(turns);
            for (int turn = 1; turn < turns.size(); turn++) {
                assertThat(turns.get(turn).commutesWith(turns.get(turn - 1))).isFalse();
            }
        }
        assertThat(drawn).hasSizeGreaterThan(195);
    }

    private Begun begin() {
        return (Begun) desk.begin("a browser");
    }

    private void turn(Turn turn) {
        desk.turned(turn, clock.nanos() / 1000);
    }

    /** A clock that a test moves. */
    private static final class Hand implements MonotonicClock {
        private long nanos = 1_000_000_000L;

        void pass(Duration duration) {
            nanos += duration.toNanos();
        }

        @Override
        public long nanos() {
            return nanos;
        }

        @Override
        public long machineNanos(Duration duration) {
            return duration.toNanos();
        }
    }
}
