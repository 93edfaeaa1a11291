package fermata.daemon.cli.asked;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a port; 0 is any that is free. */
public final class PortNumber implements ITypeConverter<Integer> {
    private static final int MOST = 65_535;

    @Override
    public Integer convert(String text) {
        try {
            int port = Integer.parseInt(text);
            if (port >= 0 && port <= MOST) {
                return port;
            }
        } catch (NumberFormatException e) {
            throw new TypeConversionException("'" + text + "' is not a whole number");
        }
        throw new TypeConversionException(text + " is not in 0.." + MOST);
    }
}
