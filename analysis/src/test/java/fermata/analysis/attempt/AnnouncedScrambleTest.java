package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.MarkKind;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.Span;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where an announced scramble is looked for, and what lies around it. */
class AnnouncedScrambleTest {
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";
    private static final String OTHER_WORDS = "R B' L2 U F2 D' R2 B U' L F R' D2 B2 L' U2 F' R D B";

    /** The words may begin up to 120 turns after they were announced, and no later. */
    @ParameterizedTest
    @CsvSource({"119, true", "120, false"})
    void shouldLookForTheWordsNearTheirAnnouncement(int turnsBefore, boolean isFound) {
        LogWriter writer = LogWriter.untimed().announce(WORDS);
        for (int pair = 0; pair < 59; pair++) {
            writer.turn("U U'");
        }
        writer.turn(turnsBefore == 119 ? "R" : "R F").turn(WORDS).turn("B");

        List<Segment.Attempt> attempts = Found.attempts(AttemptFinder.find(writer.log()));

        assertThat(attempts).hasSize(isFound ? 1 : 0);
        assertThat(attempts).allSatisfy(attempt -> {
            assertThat(attempt.scramble().span()).isEqualTo(new Span(119, 139));
            assertThat(attempt.scramble().probability()).isEqualTo(0.99);
        });
    }

    /** Done, taken back, and done again: the attempt begins after the first time, as the state would have it. */
    @Test
    void shouldEndTheScrambleWhereItsWordsWereFirstDone() {
        Segment.Attempt attempt = Found.only(LogWriter.untimed()
                .turn("R")
                .announce(WORDS)
                .turn("F")
                .turn(WORDS)
                .turn("B B'")
                .turn("L"));

        assertThat(attempt.scramble().span()).isEqualTo(new Span(2, 22));
        assertThat(attempt.solve()).isEqualTo(new Span(22, 25));
    }

    @Test
    void shouldTakeTheLastOfTwoScramblesThatWereAnnouncedAtOnce() {
        Segment.Attempt attempt = Found.only(LogWriter.untimed()
                .announce(OTHER_WORDS)
                .announce(WORDS)
                .turn(WORDS)
                .mark(MarkKind.NOTE, "a bell rang")
                .undo(WORDS));

        assertThat(attempt.scramble().announced()).isEqualTo(WORDS);
        assertThat(attempt.scramble().boundary()).isEqualTo(Boundary.ANNOUNCED_STATE);
    }

    /** Nothing follows the scramble, so nothing was attempted; what came before it joins what comes after. */
    @Test
    void shouldFindNoAttemptWhenNothingFollowsTheScramble() {
        assertThat(AttemptFinder.find(LogWriter.untimed()
                        .turn("R")
                        .announce(WORDS)
                        .turn(WORDS)
                        .mark(MarkKind.END, "")
                        .turn("F")
                        .log()))
                .containsExactly(new Segment.OtherTurning(new Span(0, 22)));
    }

    /** Fidgeting between the announcement and the scramble stays a segment of its own. */
    @Test
    void shouldHoldEveryTurnOnceInOrder() {
        List<Segment> segments = AttemptFinder.find(LogWriter.untimed()
                .turn("U")
                .announce(WORDS)
                .turn("F")
                .turn(WORDS)
                .undo(WORDS)
                .turn("D")
                .log());

        assertThat(segments).hasSize(2);
        assertThat(segments.get(0)).isEqualTo(new Segment.OtherTurning(new Span(0, 2)));
        assertThat(segments.get(1).span()).isEqualTo(new Span(2, 43));
    }
}
