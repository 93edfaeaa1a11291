/**
 * What a board needs to run fermata by itself: systemd units.
 *
 * <p>Main type: {@link fermata.daemon.service.SystemdUnits}. Takes a program and what it is told, writes unit files.
 * Source: systemd.service(5).
 */
package fermata.daemon.service;
