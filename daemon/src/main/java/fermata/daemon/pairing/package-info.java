/**
 * Which browsers beyond this machine may read the practice: those that were paired by the cube, or on the board.
 *
 * <p>Main types: {@link fermata.daemon.pairing.PairingDesk} (one attempt at a time) and
 * {@link fermata.daemon.pairing.PairedBrowsers} (who was paired, in a file of the home; tokens as SHA-256 only).
 * Source: docs/decisions/0007; OWASP Session Management for tokens of 256 random bits.
 */
package fermata.daemon.pairing;
