/**
 * The errors of BlueZ under their own names, for the virtual BlueZ alone: the D-Bus library names an error that a
 * service answers with after the class that was thrown, so these have to live here. Names: BlueZ {@code src/error.c}.
 */
package org.bluez;
