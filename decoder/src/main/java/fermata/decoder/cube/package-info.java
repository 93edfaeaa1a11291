/**
 * The 3x3x3 cube as mathematics: faces, face turns, cubies, states and their stickers.
 *
 * <p>Main type: {@link fermata.decoder.cube.CubeState}. Takes face turns named by the centres (the <em>core
 * frame</em>), gives states; words act left to right. No units: a turn is counted in clockwise quarters. Sticker
 * numbering and the turn directions follow the WCA Regulations, Article 12 (2024-01-01), and everything else is
 * derived from the geometry in {@link fermata.decoder.cube.Sticker}.
 */
package fermata.decoder.cube;
