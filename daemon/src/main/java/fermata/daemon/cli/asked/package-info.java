/**
 * What a command was asked: its options read and checked, the home it is for, the terminal it speaks to.
 *
 * <p>Main types: {@link fermata.daemon.cli.asked.HomeOption}, {@link fermata.daemon.cli.asked.Terminal}. What was
 * asked wrongly ends as a {@link fermata.daemon.cli.asked.CommandFailure}, whose message says what, where and what to
 * do.
 */
package fermata.daemon.cli.asked;
