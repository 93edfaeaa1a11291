/**
 * What a stream shows without knowing its holds, and last-layer sequences that give holds away.
 *
 * <p>Main types: {@link fermata.analysis.hold.sequence.StreamFacts} (phases and pieces at work, turn by turn), {@link
 * fermata.analysis.hold.sequence.SequenceBook} (known sequences), {@link
 * fermata.analysis.hold.sequence.LearnedSequences} (what a solver repeats). Turns are in the core frame.
 */
package fermata.analysis.hold.sequence;
