package fermata.decoder.cube;

/** The three axes, each named by its two faces, in the order in which {@link Face} declares the first of them. */
public enum Axis {
    UD,
    RL,
    FB
}
