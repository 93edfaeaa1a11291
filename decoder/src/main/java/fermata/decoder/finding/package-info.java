/**
 * The layout of a device's frames, inferred from turns that were asked for: which bits are the turn, the number, the
 * clock, the history, the check or the whole state.
 *
 * <p>Main type: {@link fermata.decoder.finding.ProfileFinder}. Takes a
 * {@link fermata.decoder.prompt.PromptedRecording}, gives a {@link fermata.decoder.finding.Finding}: a profile that was
 * proved on what nothing was learned from, or what is doubtful and how to settle it, or that the frames are enciphered.
 * Arrivals in microseconds. Method and measured figures: docs/finding.md.
 */
package fermata.decoder.finding;
