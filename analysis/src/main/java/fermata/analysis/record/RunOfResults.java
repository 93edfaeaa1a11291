package fermata.analysis.record;

import java.util.Objects;

/**
 * An average taken over every run of so many consecutive attempts of a day.
 *
 * @param latest over the last attempts of the day
 * @param best the least over any such run
 */
public record RunOfResults(Result latest, Result best) {
    public RunOfResults {
        Objects.requireNonNull(latest, "latest");
        Objects.requireNonNull(best, "best");
    }
}
