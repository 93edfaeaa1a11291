package fermata.rehearsal.truth;

/** The one hand that holds and turns. A right hand does what a mirror shows of a left one. */
public enum CuberHand {
    LEFT,
    RIGHT
}
