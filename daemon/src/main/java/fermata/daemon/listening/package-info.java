/**
 * What goes on beside a capture while {@code listen} runs: days read anew behind it, its faults told, its end.
 *
 * <p>Main type: {@link fermata.daemon.listening.BackgroundRenewal}. Takes a store and a running capture; says what
 * happens through the terminal and the live pages.
 */
package fermata.daemon.listening;
