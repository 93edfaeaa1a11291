/**
 * What others wrote, made fit to be shown: names that come over the air, lines of files, words of other programs.
 *
 * <p>{@link fermata.daemon.text.Visible} is the main type: text in, text out, without whatever a terminal would obey or
 * an eye would not see. Sources: ECMA-48 (control functions), Unicode Standard Annex 9 (directional formatting).
 */
package fermata.daemon.text;
