/**
 * What was asked for and what was heard: a drill's prompts beside the raw values of a device, from which the layout of
 * its frames can be found.
 *
 * <p>Main type: {@link fermata.decoder.prompt.PromptedRecording}; {@link fermata.decoder.prompt.PromptScript} is the
 * drill, in an order made for identification. Times are microseconds since the recording began. As text: JSON lines,
 * see docs/formats.md.
 */
package fermata.decoder.prompt;
