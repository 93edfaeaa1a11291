package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.clock.ClockFit.Quality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClockFitTest {
    /** 100 ppm over 50 s are 5 ms; the offset is that of the pivot. */
    @ParameterizedTest
    @CsvSource({"50000000, 57000000", "100000000, 107005000", "0, 6995000"})
    void shouldTurnTheLineAboutItsPivot(long deviceMicros, long boardMicros) {
        ClockFit fit = new ClockFit(50_000_000, 7_000_000, 100, 0, 0, 1, Quality.HULL);

        assertThat(fit.boardMicros(deviceMicros)).isEqualTo(boardMicros);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e6, 1e9, Double.NaN, Double.POSITIVE_INFINITY})
    void shouldRefuseASkewWithWhichTimeWouldStandStillOrLeap(double skewPpm) {
        assertThatThrownBy(() -> new ClockFit(0, 0, skewPpm, 0, 0, 1, Quality.HULL))
                .hasMessageContaining("skewPpm " + skewPpm);
    }

    @Test
    void shouldRefuseALineOfNoPointsOrOfNoHeight() {
        assertThatThrownBy(() -> new ClockFit(0, 0, 0, 0, 0, 0, Quality.HULL)).hasMessageContaining("points 0");
        assertThatThrownBy(() -> new ClockFit(0, Double.NaN, 0, 0, 0, 1, Quality.HULL))
                .hasMessageContaining("offsetMicros NaN");
        assertThatThrownBy(() -> new ClockFit(0, 0, 0, 0, 0, 1, null)).hasMessageContaining("quality");
    }
}
