/**
 * Documents as text of 80 columns.
 *
 * <p>A {@code ...Text} for each document of {@code daemon.json}: takes the document, gives lines. Times are cut or
 * rounded as {@link fermata.daemon.cli.text.Seconds} says.
 */
package fermata.daemon.cli.text;
