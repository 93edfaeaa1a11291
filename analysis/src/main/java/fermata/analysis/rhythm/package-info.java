/**
 * How fast a night's turns follow each other, and which intervals that does not explain.
 *
 * <p>Main types: {@link fermata.analysis.rhythm.RhythmSnapshot} (the frozen parameters), {@link
 * fermata.analysis.rhythm.Rests}. Intervals in microseconds, judged on a log scale. First version: median and median
 * absolute deviation; one clock only, so intervals across a gap are left out. Source: for why a fixed cut-off would
 * mislead, Roeser et al. 2021, doi 10.1007/s11145-021-10203-z.
 */
package fermata.analysis.rhythm;
