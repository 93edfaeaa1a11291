package fermata.rehearsal;

import fermata.rehearsal.character.Ranges;

/**
 * What an evening should hold.
 *
 * @param solves how many attempts end solved; abandoned ones come on top
 * @param announcedShare share of scrambles whose words were announced
 * @param abandonShare share of attempts given up
 * @param fidgetShare share of pauses with idle turning
 * @param otherHoldShare share of scrambles turned in another hold than meant
 */
public record EveningPlan(
        int solves, double announcedShare, double abandonShare, double fidgetShare, double otherHoldShare) {
    /** Checks that no share is out of range. */
    public EveningPlan {
        if (solves < 0) {
            throw new IllegalArgumentException("solves " + solves + " is below zero");
        }
        Ranges.requireShare("announcedShare", announcedShare);
        Ranges.requireShare("abandonShare", abandonShare);
        Ranges.requireShare("fidgetShare", fidgetShare);
        Ranges.requireShare("otherHoldShare", otherHoldShare);
        if (abandonShare > 0.9) {
            throw new IllegalArgumentException(
                    "abandonShare " + abandonShare + " leaves hardly a solve to wait for; take at most 0.9");
        }
    }

    /** The usual mix: mostly announced, now and then abandoned, fidgeted with or held otherwise. */
    public static EveningPlan ofSolves(int solves) {
        return new EveningPlan(solves, 0.8, 0.08, 0.2, 0.1);
    }

    /** Announced scrambles and solves only. */
    public static EveningPlan plain(int solves) {
        return new EveningPlan(solves, 1, 0, 0, 0);
    }
}
