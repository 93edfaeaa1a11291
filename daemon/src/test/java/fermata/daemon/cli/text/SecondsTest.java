package fermata.daemon.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Hundredths as the WCA Regulations write them. */
class SecondsTest {
    /** 12.678 is written as 12.67: the example of guideline 9f1+. */
    @Test
    void shouldCutATimeThatWasMeasured() {
        assertThat(Seconds.of(12_678_000L)).isEqualTo("12.67");
        assertThat(Seconds.of(59_999_999L)).isEqualTo("59.99");
        assertThat(Seconds.of(68_429_000L)).isEqualTo("1:08.42");
    }

    /** 9f1: averages and means under ten minutes are rounded to the nearest hundredth. */
    @Test
    void shouldRoundAFigureThatWasWorkedOut() {
        assertThat(Seconds.ofFigure(12_675_000L)).isEqualTo("12.68");
        assertThat(Seconds.ofFigure(12_674_999L)).isEqualTo("12.67");
        assertThat(Seconds.ofFigure(59_996_000L)).isEqualTo("1:00.00");
        assertThat(Seconds.ofFigure(null)).isEqualTo("-");
    }
}
