/**
 * The command line: what is asked for, in which home, and how it is printed.
 *
 * <p>{@link fermata.daemon.cli.Main} is the entry. Commands take their options from picocli and their surroundings
 * from {@link fermata.daemon.cli.asked.Terminal}, ask {@link fermata.daemon.practice.Practice} and print text of 80
 * columns or, with {@code --json}, the documents of docs/formats.md. Exit codes: 0 done, 2 the input, the options or
 * the surroundings were wrong and the message says how, 1 a fault of our own.
 */
package fermata.daemon.cli;
