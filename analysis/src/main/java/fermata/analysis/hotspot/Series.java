package fermata.analysis.hotspot;

import fermata.analysis.event.Hand;
import fermata.analysis.record.Method;
import fermata.analysis.record.SolveRecord;
import java.util.Comparator;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What may be compared over time: a change of any of these begins a new series. A two-handed solve is of another series
 * by its hand, a solve on another cube by its cube; one that was set aside is of a series of its own.
 *
 * @param solver who
 * @param cube with which cube
 * @param hand with which hand
 * @param method by which method
 * @param isSetAside whether a verdict set the solve aside
 */
public record Series(String solver, String cube, Hand hand, Method method, boolean isSetAside) {
    public Series {
        Objects.requireNonNull(solver, "solver");
        Objects.requireNonNull(cube, "cube");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(method, "method");
    }

    /**
     * The one with the most solves; one that was set aside only if there is no other. Empty if there is none.
     *
     * @param solves how many each has
     */
    public static Optional<Series> mostPractised(Map<Series, Integer> solves) {
        return solves.keySet().stream()
                .max(Comparator.<Series>comparingInt(series -> series.isSetAside() ? 0 : 1)
                        .thenComparingInt(solves::get));
    }

    /** The series of a solve. */
    public static Series of(SolveRecord solve) {
        return new Series(
                solve.attempt().origin().solver(),
                solve.attempt().origin().cube(),
                solve.attempt().origin().hand(),
                solve.method(),
                solve.attempt().setAside());
    }
}
