package fermata.daemon.practice;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.store.RhythmRow;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class RhythmChainTest {
    private static final RhythmChain.Owner LEFT = new RhythmChain.Owner("cook", "galley cube", "left");
    private static final RhythmChain.Owner RIGHT = new RhythmChain.Owner("cook", "galley cube", "right");

    @Test
    void shouldBeginFromTheColdStartAndThenFromTheDayBefore() {
        RhythmChain chain = new RhythmChain(List.of(row(3, LEFT, RhythmChain.COLD_START, "a"), row(7, LEFT, "a", "b")));

        assertThat(chain.before(LEFT, day(3))).isEqualTo(RhythmChain.COLD_START);
        assertThat(chain.before(LEFT, day(4))).isEqualTo("a");
        assertThat(chain.before(LEFT, day(7))).isEqualTo("a");
        assertThat(chain.before(LEFT, day(20))).isEqualTo("b");
        assertThat(chain.before(RIGHT, day(20))).isEqualTo(RhythmChain.COLD_START);
        assertThat(chain.broken()).isEmpty();
    }

    @Test
    void shouldBreakWhereADayBeganFromAnotherRhythmThanItWouldNow() {
        RhythmChain chain = new RhythmChain(List.of(
                row(3, LEFT, RhythmChain.COLD_START, "a"),
                row(3, RIGHT, RhythmChain.COLD_START, "r"),
                row(7, LEFT, "a", "b"),
                row(7, RIGHT, "r", "s"),
                row(9, LEFT, "b", "c")));

        chain.replace(
                day(3),
                List.of(row(3, LEFT, RhythmChain.COLD_START, "other"), row(3, RIGHT, RhythmChain.COLD_START, "r")));
        assertThat(chain.broken()).containsExactly(day(7));

        chain.replace(day(7), List.of(row(7, LEFT, "other", "b"), row(7, RIGHT, "r", "s")));
        assertThat(chain.broken()).as("what day 9 began from came out the same").isEmpty();

        chain.replace(day(7), List.of(row(7, RIGHT, "r", "s")));
        assertThat(chain.broken()).as("the day before day 9 is day 3 now").containsExactly(day(9));
    }

    @Test
    void shouldBreakWhereADayWasReadByOtherSequencesThanItWouldNow() {
        RhythmRow third = read(3, "", "q");
        RhythmChain chain = new RhythmChain(List.of(third, read(7, "q", "s"), read(9, "s", "t")));

        assertThat(chain.sequencesBefore(LEFT, day(3))).isEmpty();
        assertThat(chain.sequencesBefore(LEFT, day(9))).isEqualTo("s");
        assertThat(chain.sequencesBefore(RIGHT, day(9))).isEmpty();
        assertThat(chain.broken()).isEmpty();

        chain.replace(day(3), List.of(read(3, "", "other")));
        assertThat(chain.broken()).containsExactly(day(7));

        chain.replace(day(7), List.of(read(7, "other", "more")));
        assertThat(chain.broken()).containsExactly(day(9));
    }

    private static RhythmRow read(int day, String before, String left) {
        String cold = RhythmChain.COLD_START;
        return new RhythmRow(day(day), LEFT.solver(), LEFT.cube(), LEFT.hand(), cold, cold, before, left);
    }

    private static RhythmRow row(int day, RhythmChain.Owner owner, String beganFrom, String left) {
        return new RhythmRow(day(day), owner.solver(), owner.cube(), owner.hand(), beganFrom, left, "", "");
    }

    private static LocalDate day(int day) {
        return LocalDate.of(2026, 11, day);
    }
}
