/**
 * Stream profiles: one JSON file that says how a cube's plain notifications map to turns.
 *
 * <p>Main type: {@link fermata.decoder.stream.profile.StreamProfile}. Takes the text of the file, gives a
 * {@link fermata.decoder.stream.profile.ProfileReading}: the profile, or every problem with its place. Offsets and
 * widths in bits, ticks in microseconds. The format is our own and stands in docs/stream-profile.md.
 */
package fermata.decoder.stream.profile;
