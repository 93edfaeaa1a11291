package fermata.daemon.time;

import java.util.Arrays;
import java.util.Locale;

/** Why the machine's date is believed, if it is. A board without a battery clock starts with an old one. */
public enum ClockProof {
    /** Nothing says that it is right. */
    NONE,
    /** The system clock is steered by the network's time. */
    NETWORK,
    /** A clock with a battery of its own agrees. */
    BATTERY,
    /** Somebody said so. */
    PERSON;

    /** The word that is stored. */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What a stored word means. */
    public static ClockProof of(String word) {
        return Arrays.stream(values())
                .filter(proof -> proof.written().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "clock proof \"" + word + "\" is none of none, network," + " battery, person"));
    }
}
