/**
 * The pages: what was practised and what happens now, served to browsers on this machine, and to paired ones near it.
 *
 * <p>{@link fermata.daemon.web.PageServer} answers for the pages, for their files (both from the jar), and
 * for the read-only JSON under {@code /api/}, which is what the command line prints with {@code --json}, taken from a
 * {@link fermata.daemon.json.PracticeReader}. Times in the JSON are microseconds; pages show seconds.
 *
 * <p>Source of the header rules: Content Security Policy level 3, RFC 9110 (conditional requests), and for the check of
 * the Host header the usual defence against DNS rebinding.
 */
package fermata.daemon.web;
