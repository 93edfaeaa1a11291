package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Clients of a port on this machine, whose addresses 127.0.0.2 and so on are several; they speak in bytes. */
final class Callers implements AutoCloseable {
    private final int port;
    private final List<Socket> sockets = new ArrayList<>();

    Callers(int port) {
        this.port = port;
    }

    Socket connected(String from) throws IOException {
        Socket socket = new Socket();
        sockets.add(socket);
        socket.setSoTimeout(10_000);
        socket.bind(new InetSocketAddress(InetAddress.getByName(from), 0));
        socket.connect(new InetSocketAddress("127.0.0.1", port));
        return socket;
    }

    List<Socket> saying(String from, int count, String words) throws IOException {
        List<Socket> saying = new ArrayList<>();
        for (int number = 0; number < count; number++) {
            Socket socket = connected(from);
            saying.add(socket);
            try {
                write(socket, words);
            } catch (IOException hungUp) {
                // Then its end says so.
                continue;
            }
        }
        return saying;
    }

    List<Socket> halfRequests(String from, int count) throws IOException {
        return saying(from, count, "GET / HTTP/1.1\r\nHost");
    }

    /** All that is answered to some words, up to the end of the connection, which the port must make. */
    String answers(String from, String words) throws IOException {
        try (Socket socket = connected(from)) {
            write(socket, words);
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        } catch (SocketTimeoutException stillThere) {
            throw new AssertionError("the connection goes on", stillThere);
        } catch (IOException hungUp) {
            return "";
        }
    }

    /** How many of these are hung up on, sooner than a half request is. */
    static long hungUp(List<Socket> clients) throws IOException {
        long ended = 0;
        for (Socket client : clients) {
            client.setSoTimeout(1000 * HttpPort.HEAD_SECONDS / 2);
            ended += hears(client) ? 0 : 1;
        }
        return ended;
    }

    /** Whether a client was not hung up on within its time-out. */
    static boolean hears(Socket client) {
        try {
            return client.getInputStream().read() >= 0;
        } catch (SocketTimeoutException stillThere) {
            return true;
        } catch (IOException reset) {
            return false;
        }
    }

    static void write(Socket socket, String words) throws IOException {
        socket.getOutputStream().write(words.getBytes(StandardCharsets.ISO_8859_1));
    }

    static String read(Socket socket, String last) throws IOException {
        ByteArrayOutputStream heard = new ByteArrayOutputStream();
        while (!heard.toString(StandardCharsets.US_ASCII).endsWith(last)) {
            int next = socket.getInputStream().read();
            assertThat(next).as("the connection ended after %s", heard).isNotNegative();
            heard.write(next);
        }
        return heard.toString(StandardCharsets.US_ASCII);
    }

    @Override
    public void close() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }
}
