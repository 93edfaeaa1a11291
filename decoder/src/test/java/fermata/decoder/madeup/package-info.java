/**
 * Cubes that nobody has built: a frame layout drawn by a seed, a device that speaks it, a hand that follows the drill
 * with slips, and a radio that loses, doubles and bundles frames. Written apart from what finds layouts: it knows the
 * values of profiles and recordings, and nothing of how they are inferred.
 */
package fermata.decoder.madeup;
