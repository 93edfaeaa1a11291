package fermata.analysis.record;

/** Whether a rest is a fermata: one before a pair or block that could have been found earlier from what was visible. */
public enum FermataJudgement {
    /** Nobody looked: what was visible before the rest has not been worked out. */
    NOT_JUDGED
}
