package fermata.decoder.finding;

/**
 * A value and where it stands in the drill. Its bytes are not copied: nothing here changes them.
 *
 * @param bytes the value
 * @param micros arrival, since the recording began
 * @param prompt index of the prompt that was shown; -1 before the first
 */
record Heard(byte[] bytes, long micros, int prompt) {}
