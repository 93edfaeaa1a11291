package fermata.daemon.capture;

import java.util.List;

/**
 * Hears what is on the disk. Called by the writer thread after the commit; must be quick, a slow listener delays the
 * next commit.
 */
@FunctionalInterface
public interface CaptureListener {
    /** The items of one commit, in order. */
    void committed(List<CapturedItem> items);
}
