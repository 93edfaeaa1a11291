package fermata.analysis.record;

/** How it is known where the scramble ends and the attempt may begin. */
public enum Boundary {
    /** The announced scramble's state was reached. */
    ANNOUNCED_STATE,
    /** The announced scramble's words were done, in a hold of their own or on a cube that was not solved. */
    ANNOUNCED_WORDS,
    /** Nothing was announced, or what was announced was never reached: inferred, with a probability. */
    INFERRED
}
