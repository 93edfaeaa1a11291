package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.stream.profile.TurnCode;
import java.util.List;
import java.util.Map;

/**
 * Where the code of a turn stands and what its values mean.
 *
 * @param code the field, or the fields
 * @param table value to turn
 * @param agreeing of the single turns that were asked for, how many the code tells as asked
 * @param examples how many of them were heard
 * @param missing turns that have no code yet and should
 */
record CodeFound(TurnCode code, Map<Long, Turn> table, int agreeing, int examples, List<Turn> missing) {
    /** The same code with its fields read in the other order, where that reads the same. */
    CodeFound inOtherOrder() {
        TurnCode turned =
                new TurnCode(code.parts().stream().map(BitPlace::inOtherOrder).toList());
        return new CodeFound(turned, table, agreeing, examples, missing);
    }
}
