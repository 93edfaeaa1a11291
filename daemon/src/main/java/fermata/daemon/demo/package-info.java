/**
 * The demo: an evening of a made-up solver, played by the virtual cube and recorded by the real capture path.
 *
 * <p>{@link fermata.daemon.demo.Demo} is the main type. {@link fermata.daemon.demo.Rehearsal} is the evening: a turn
 * stream with the scrambles as marks and the truth in its header, made by a short-lived process, because the search
 * tables it needs have no place in a process that captures.
 */
package fermata.daemon.demo;
