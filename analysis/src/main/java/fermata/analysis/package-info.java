/**
 * From a night's events to what they were: attempts, methods, stages, rests, averages.
 *
 * <p>Main type: {@link fermata.analysis.PracticeAnalysis}. Takes capture logs, gives the types of {@code record}; all
 * times are microseconds. Pure: no input or output, no clock, no chance.
 */
package fermata.analysis;
