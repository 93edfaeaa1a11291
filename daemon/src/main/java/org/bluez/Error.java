package org.bluez;

import org.freedesktop.dbus.exceptions.DBusExecutionException;

/** Thrown by an exported method, {@code Error.X} reaches the caller as the D-Bus error {@code org.bluez.Error.X}. */
public final class Error {
    private Error() {}

    /** The general failure; its text says which. */
    public static final class Failed extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public Failed(String message) {
            super(message);
        }
    }

    /** The adapter is off. */
    public static final class NotReady extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public NotReady(String message) {
            super(message);
        }
    }

    /** The same is being done already. */
    public static final class InProgress extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public InProgress(String message) {
            super(message);
        }
    }

    /** There is a link already. */
    public static final class AlreadyConnected extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public AlreadyConnected(String message) {
            super(message);
        }
    }

    /** There is no link. */
    public static final class NotConnected extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public NotConnected(String message) {
            super(message);
        }
    }

    /** The characteristic cannot do that. */
    public static final class NotSupported extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public NotSupported(String message) {
            super(message);
        }
    }

    /** There is no such object. */
    public static final class DoesNotExist extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        public DoesNotExist(String message) {
            super(message);
        }
    }
}
