/**
 * The calibration drill, which tells a solver's times apart: for a turn that just follows, after a regrip, a rotation,
 * and for a wide turn.
 *
 * <p>Main types: {@link fermata.analysis.calibration.CalibrationDrill} (short sequences that by design contain or
 * avoid each, and where they lie in a stream), {@link fermata.analysis.calibration.Calibration} (what they teach).
 * Intervals in microseconds, judged on a log scale. Sources: medians, Hampel 1974; area under the curve, Hanley and
 * McNeil 1982.
 */
package fermata.analysis.calibration;
