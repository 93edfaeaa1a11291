package fermata.daemon.fakebluez;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.freedesktop.dbus.connections.transports.AbstractTransport;
import org.freedesktop.dbus.connections.transports.TransportBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.messages.Message;
import org.freedesktop.dbus.messages.MessageFactory;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.UInt32;

/** Somebody on a bus who writes every message by hand: no interface is checked, nothing is answered unasked. */
final class RawPeer implements AutoCloseable {
    private static final String BUS = "org.freedesktop.DBus";

    private final AbstractTransport transport;
    private final MessageFactory messages;
    private final Consumer<MethodCall> calls;
    private final Map<Long, CompletableFuture<Message>> awaited = new ConcurrentHashMap<>();
    private final Thread reader;
    private volatile boolean closed;

    private RawPeer(AbstractTransport transport, Consumer<MethodCall> calls) {
        this.transport = transport;
        this.messages = transport.getMessageFactory();
        this.calls = calls;
        this.reader = new Thread(this::read, "raw-peer");
        reader.setDaemon(true);
    }

    /** Comes onto the bus; {@code calls} hears what is asked of it, on the peer's own thread. */
    static RawPeer on(String address, Consumer<MethodCall> calls) {
        try {
            AbstractTransport transport = TransportBuilder.create(address).build();
            transport.connect();
            RawPeer peer = new RawPeer(transport, calls);
            peer.reader.start();
            peer.askBus("Hello", null);
            return peer;
        } catch (DBusException e) {
            throw new IllegalStateException("no peer on " + address, e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes a name on the bus. */
    void own(String name) {
        askBus("RequestName", "su", name, new UInt32(4));
    }

    private void askBus(String method, String signature, Object... arguments) {
        try {
            MethodCall call = messages.createMethodCall(
                    null, BUS, "/org/freedesktop/DBus", BUS, method, (byte) 0, signature, arguments);
            CompletableFuture<Message> answer = new CompletableFuture<>();
            awaited.put(call.getSerial(), answer);
            write(call);
            answer.get(20, TimeUnit.SECONDS);
        } catch (Exception e) {
            throw new IllegalStateException("the bus does not answer " + method, e);
        }
    }

    /** What was asked for. */
    static Object[] arguments(MethodCall call) {
        try {
            return call.getParameters();
        } catch (DBusException e) {
            throw new IllegalStateException("the capture's own call cannot be read: " + call, e);
        }
    }

    /** Answers a call with values of a signature, "" for none. */
    void reply(MethodCall call, String signature, Object... values) {
        write(() -> messages.createMethodReturn(call, signature.isEmpty() ? null : signature, values));
    }

    /** Answers a call with an error: its name and its text, with a bar between. */
    void refuse(MethodCall call, String error) {
        String[] parts = error.split("[|]", 2);
        write(() -> messages.createError(null, call.getSource(), parts[0], call.getSerial(), "s", parts[1]));
    }

    /** Says something to all. */
    void signal(String path, String interfaceName, String member, String signature, Object... values) {
        write(() -> messages.createSignal(null, path, interfaceName, member, signature, values));
    }

    private interface Writing {
        Message message() throws DBusException;
    }

    private void write(Writing writing) {
        try {
            write(writing.message());
        } catch (DBusException e) {
            throw new IllegalStateException("the fake cannot put its message together", e);
        }
    }

    private synchronized void write(Message message) {
        if (closed) {
            return;
        }
        try {
            transport.writeMessage(message);
        } catch (IOException e) {
            if (!closed) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private void read() {
        while (!closed) {
            try {
                Message message = transport.readMessage();
                if (message instanceof MethodCall call) {
                    calls.accept(call);
                } else if (message != null) {
                    CompletableFuture<Message> answer = awaited.remove(message.getReplySerial());
                    if (answer != null) {
                        answer.complete(message);
                    }
                }
            } catch (IOException | DBusException e) {
                return;
            }
        }
    }

    /** Goes without a word. */
    @Override
    public void close() {
        synchronized (this) {
            closed = true;
        }
        try {
            transport.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
