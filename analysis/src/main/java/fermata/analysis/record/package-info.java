/**
 * What the analysis finds, as values to be kept, printed and drawn.
 *
 * <p>Main types: {@link fermata.analysis.record.SolveRecord} and {@link fermata.analysis.record.Segment}. All times are
 * microseconds. Turn numbers say what they count: <em>raw</em> ones count the turns of a capture from 0, plain ones the
 * turns of one solve from 0 ({@code raw = firstTurn + index}). Whatever is inferred carries a probability, whatever is
 * derived its provenance.
 */
package fermata.analysis.record;
