package fermata.daemon.cli.asked;

import fermata.daemon.json.Over;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the word after {@code --over}. */
public final class OverWord implements ITypeConverter<Over> {
    @Override
    public Over convert(String word) {
        return Over.of(word)
                .orElseThrow(() -> new TypeConversionException("\"" + word + "\" is not night, week or all"));
    }
}
