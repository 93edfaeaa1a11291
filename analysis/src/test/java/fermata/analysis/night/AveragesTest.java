package fermata.analysis.night;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.record.Result;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class AveragesTest {
    /** {@code wca_averages.csv}: WCA Regulations 9f1, 9f8 to 9f11, in hundredths. */
    @Test
    void shouldAgreeWithTheRegulationsWhenAttemptsAreInHundredths() throws IOException {
        List<String> rows = rows();
        assertThat(rows).hasSize(19);
        for (String row : rows) {
            String[] cells = row.split(",");
            List<Result> attempts =
                    Arrays.stream(cells[1].split(" ")).map(AveragesTest::result).toList();
            Result found = cells[0].equals("average_of_5") ? Averages.trimmed(attempts) : Averages.mean(attempts);
            assertThat(found).as(row).isEqualTo(result(cells[2]));
        }
    }

    @Test
    void shouldCutAttemptsOffAtHundredthsWhenTheyAreFiner() {
        // 9f1: 12.678 is written 12.67.
        assertThat(Averages.mean(List.of(new Result.Time(12_678_000)))).isEqualTo(new Result.Time(12_670_000));
    }

    @Test
    void shouldRoundToSecondsWhenTenMinutesArePassed() {
        // 9f2: x.49 down, x.50 up.
        assertThat(Averages.mean(List.of(new Result.Time(700_490_000)))).isEqualTo(new Result.Time(700_000_000));
        assertThat(Averages.mean(List.of(new Result.Time(700_500_000)))).isEqualTo(new Result.Time(701_000_000));
    }

    @Test
    void shouldLeaveOneBestAndOneWorstOutWhenTwelveAreAveraged() {
        List<Result> results = new ArrayList<>();
        for (int second = 1; second <= 11; second++) {
            results.add(new Result.Time(second * 1_000_000L));
        }
        results.add(new Result.Dnf());

        assertThat(Averages.runs(results, 12).latest()).isEqualTo(new Result.Time(6_500_000));
    }

    @Test
    void shouldKeepTheBestRunWhenTheLatestIsWorse() {
        List<Result> results = new ArrayList<>();
        for (int second : new int[] {9, 9, 9, 9, 9, 20, 20, 20}) {
            results.add(new Result.Time(second * 1_000_000L));
        }

        assertThat(Averages.runs(results, 5).best()).isEqualTo(new Result.Time(9_000_000));
        assertThat(Averages.runs(results, 5).latest()).isEqualTo(new Result.Time(16_330_000));
    }

    @Test
    void shouldSayHowManyAreMissingWhenARunIsTooShort() {
        assertThat(Averages.runs(List.of(new Result.Dnf()), 5).best()).isEqualTo(new Result.TooFew(1, 5));
    }

    private static Result result(String hundredths) {
        return hundredths.equals("DNF") ? new Result.Dnf() : new Result.Time(Long.parseLong(hundredths) * 10_000);
    }

    private static List<String> rows() throws IOException {
        try (InputStream table = Objects.requireNonNull(
                AveragesTest.class.getResourceAsStream("/fermata/fixtures/reference/wca_averages.csv"))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .toList();
        }
    }
}
