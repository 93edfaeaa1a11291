package fermata.daemon.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What is not well with a practice, in sentences that say what to do. Stateless. */
final class StoreWarnings {
    private static final String TO_DO =
            "; fermata recover brings back what can still be read, fermata recover --dismiss" + " names it no more";

    private StoreWarnings() {}

    static List<String> of(
            Home home, List<Missing> missing, List<String> captures, Opening.Found found, CountFile.Reading count) {
        List<String> warnings = new ArrayList<>();
        found.setAside()
                .ifPresent(aside -> warnings.add("the practice in " + home.directory() + " was damaged; it is kept as "
                        + aside + " and a new one is begun"));
        for (Path aside : SetAside.waiting(home)) {
            warnings.add(aside + " was set aside because it is damaged" + TO_DO);
        }
        warnings.addAll(ofRows(missing, captures));
        if (count.isDamaged()) {
            warnings.add(home.count() + " is damaged: whether something at the end is missing cannot be told");
        }
        return warnings;
    }

    /** What of this practice itself is missing or altered. */
    static List<String> ofRows(List<Missing> missing, List<String> captures) {
        List<String> warnings = new ArrayList<>();
        String counted = counted(missing);
        if (!counted.isEmpty()) {
            warnings.add(counted + " acknowledged and cannot be read" + TO_DO);
        }
        warnings.addAll(captures);
        return warnings;
    }

    /** "212 frames (1001 to 1212) and 1 told event (7) were"; empty if nothing is missing. */
    private static String counted(List<Missing> missing) {
        List<String> parts = new ArrayList<>();
        long all = 0;
        for (Missing.Kind kind : Missing.Kind.values()) {
            List<Missing> ofKind =
                    missing.stream().filter(each -> each.kind() == kind).toList();
            long count = ofKind.stream().mapToLong(Missing::count).sum();
            all += count;
            if (count > 0) {
                String word = kind == Missing.Kind.FRAME ? "frame" : "told event";
                parts.add(count + " " + word + (count == 1 ? "" : "s") + " (" + ranges(ofKind) + ")");
            }
        }
        return parts.isEmpty() ? "" : String.join(" and ", parts) + (all == 1 ? " was" : " were");
    }

    private static String ranges(List<Missing> missing) {
        List<String> ranges = missing.stream()
                .limit(3)
                .map(each -> each.count() == 1 ? "" + each.first() : each.first() + " to " + each.last())
                .toList();
        return String.join(", ", ranges) + (missing.size() > 3 ? " and others" : "");
    }
}
