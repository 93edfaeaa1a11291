package fermata.analysis.record;

import java.util.Objects;

/**
 * What derived a result.
 *
 * @param codeVersion the version of the analysis code
 * @param snapshotId the frozen parameters it used
 */
public record Provenance(String codeVersion, String snapshotId) {
    public Provenance {
        Objects.requireNonNull(codeVersion, "codeVersion");
        Objects.requireNonNull(snapshotId, "snapshotId");
    }
}
