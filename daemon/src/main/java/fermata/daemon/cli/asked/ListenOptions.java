package fermata.daemon.cli.asked;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CentralSettings;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.web.PageServer;
import fermata.decoder.stream.OpenLayout;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import picocli.CommandLine.Option;

/** Which cube is listened to, by which adapter, and who may see the pages. */
public final class ListenOptions {
    private static final Pattern ADDRESS = Pattern.compile("([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}");

    @Option(
            names = "--profile",
            paramLabel = "FILE",
            description = "How the cube talks (docs/stream-profile.md). Default: the open layout.")
    private Path profile;

    @Option(
            names = "--bus",
            paramLabel = "ADDRESS",
            description = "The D-Bus that BlueZ is on, such as unix:path=/run/bus. Default: the system bus.")
    private String bus = BluetoothCapture.SYSTEM_BUS;

    @Option(
            names = "--adapter",
            paramLabel = "ADDRESS",
            description = "Which Bluetooth adapter to use, by its address. Default: the first that is on.")
    private String adapter = "";

    @Option(
            names = "--reset-adapter",
            description = "Switch the adapter off and on where it hangs. Whatever else it serves loses its links.")
    private boolean resetAdapter;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            converter = PortNumber.class,
            description = "Where the pages are. Default: ${DEFAULT-VALUE}.")
    private int port = PageServer.DEFAULT_PORT;

    @Option(
            names = "--lan",
            negatable = true,
            description = "Serve the pages to other machines on the network too, to browsers that were paired.")
    private Boolean lan;

    @Option(names = "--no-pages", description = "Serve no pages.")
    private boolean withoutPages;

    @Option(
            names = "--trust-clock",
            description = "This machine's date is right, although neither the network nor a battery clock says so.")
    private boolean trustsClock;

    public String bus() {
        return bus;
    }

    public int port() {
        return port;
    }

    /** What was said about the network, if anything was. */
    public Optional<Boolean> lan() {
        return Optional.ofNullable(lan);
    }

    public boolean trustsClock() {
        return trustsClock;
    }

    public boolean hasPages() {
        return !withoutPages;
    }

    /** The profile that was named and can be used, or the open layout's. */
    public ProfileFile profileFile() {
        return profile == null
                ? new ProfileFile(OpenLayout.profileText(), OpenLayout.profile())
                : ProfileFile.read(profile);
    }

    /** How to listen, as asked for; a word that is no adapter's address ends the command. */
    public BluetoothCapture.Settings capture() {
        CentralSettings central = CentralSettings.usual();
        if (!adapter.isEmpty()) {
            if (!ADDRESS.matcher(adapter).matches()) {
                throw new CommandFailure("--adapter " + adapter
                        + " is not a Bluetooth address such as 01:23:45:67:89:AB; `bluetoothctl list` names them");
            }
            central = central.onAdapter(adapter.toUpperCase(Locale.ROOT));
        }
        return new BluetoothCapture.Settings(
                resetAdapter ? central.owningAdapter() : central, PipelineSettings.forBoard());
    }

    /** These options as words, without the network; paths are full ones. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        if (profile != null) {
            words.addAll(
                    List.of("--profile", profile.toAbsolutePath().normalize().toString()));
        }
        if (!bus.equals(BluetoothCapture.SYSTEM_BUS)) {
            words.addAll(List.of("--bus", bus));
        }
        if (!adapter.isEmpty()) {
            words.addAll(List.of("--adapter", adapter));
        }
        if (resetAdapter) {
            words.add("--reset-adapter");
        }
        if (trustsClock) {
            words.add("--trust-clock");
        }
        if (port != PageServer.DEFAULT_PORT) {
            words.addAll(List.of("--port", Integer.toString(port)));
        }
        if (withoutPages) {
            words.add("--no-pages");
        }
        return words;
    }
}
