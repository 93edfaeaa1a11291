/**
 * How the whole cube sits in the hand: the 24 orientations and the rotations x, y, z between them.
 *
 * <p>Main type: {@link fermata.decoder.orientation.Orientation}. Takes turns in the hand frame (named by where the
 * solver sees the layer) and gives turns in the core frame (named by the centres), and back. Directions follow the
 * WCA Regulations, Article 12a4: x like R, y like U, z like F.
 */
package fermata.decoder.orientation;
