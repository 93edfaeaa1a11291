package fermata.decoder.stream;

/** How a turn is known. There is no third way: a turn that neither was heard nor stood in a history is a gap. */
public enum TurnSource {
    /** A frame that announced the turn arrived. */
    HEARD,
    /** The announcing frame was lost; the turn was read from the history in a later frame. */
    REPAIRED
}
