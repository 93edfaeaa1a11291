/**
 * Work that needs more memory than a process that captures may take: done by a short-lived process of this program.
 *
 * <p>{@link fermata.daemon.process.OwnProcess} is the main type. It takes a command of fermata with its arguments and
 * gives what it printed.
 */
package fermata.daemon.process;
