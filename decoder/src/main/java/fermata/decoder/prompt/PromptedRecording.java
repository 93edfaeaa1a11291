package fermata.decoder.prompt;

import fermata.decoder.stream.RawFrame;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

/**
 * A whole drill: what was asked for, and all that the device said. Immutable.
 *
 * @param device its name as advertised, "" if it has none
 * @param services what it advertises or has
 * @param bonded whether it was paired with before it said anything
 * @param prompts in the order shown
 * @param values in the order of arrival; nanoseconds count from the recording's beginning
 * @param endMicros when the recording ended, microseconds since it began
 */
public record PromptedRecording(
        String device,
        List<UUID> services,
        boolean bonded,
        List<Prompt> prompts,
        List<RawFrame> values,
        long endMicros) {
    public PromptedRecording {
        Objects.requireNonNull(device, "device");
        services = List.copyOf(services);
        prompts = List.copyOf(prompts);
        values = List.copyOf(values);
        if (prompts.isEmpty()) {
            throw new IllegalArgumentException("prompts is empty: nothing says what was turned");
        }
    }

    /** When prompt {@code index} ended: when the next was shown, or the recording ended. */
    public long endOfPrompt(int index) {
        return index + 1 < prompts.size() ? prompts.get(index + 1).atMicros() : endMicros;
    }
}
