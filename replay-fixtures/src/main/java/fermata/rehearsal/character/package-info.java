/**
 * Who a virtual cuber is: the hand, the pace, the pauses, the habits and the sequences of the last layer.
 *
 * <p>Main type: {@link fermata.rehearsal.character.CuberStyle}, with some made-up ones ready. Times are microseconds,
 * shares are 0..1. All planning is for a left hand; {@link fermata.rehearsal.character.HandMirror} stands before a
 * right one.
 */
package fermata.rehearsal.character;
