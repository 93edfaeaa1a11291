package fermata.daemon.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Counts the work that pages make from now on: what makes them slow, on whatever machine. */
final class PageWork implements AutoCloseable {
    private static final String COUNTING = """
            window.counted = {measures: 0, elements: 0};
            const count = (holder, name, what) => {
                const made = holder[name];
                holder[name] = function (...given) { counted[what]++; return made.apply(this, given); };
            };
            count(Element.prototype, 'getBoundingClientRect', 'measures');
            count(Element.prototype, 'getClientRects', 'measures');
            count(SVGGraphicsElement.prototype, 'getBBox', 'measures');
            count(SVGTextContentElement.prototype, 'getComputedTextLength', 'measures');
            count(CanvasRenderingContext2D.prototype, 'measureText', 'measures');
            count(window, 'getComputedStyle', 'measures');
            count(Document.prototype, 'createElement', 'elements');
            count(Document.prototype, 'createElementNS', 'elements');
            count(Node.prototype, 'cloneNode', 'elements');
            """;

    private final Browser browser;
    private final Map<String, Object> script;

    PageWork(Browser browser) {
        this.browser = browser;
        browser.driver().executeCdpCommand("Performance.enable", Map.of());
        script =
                browser.driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", COUNTING));
    }

    /** Of the page now open: {@code elements} made, {@code measures} asked for, and the browser's own counts. */
    Map<String, Long> soFar() {
        Map<String, Long> work = new LinkedHashMap<>();
        Map<String, Object> measured = browser.driver().executeCdpCommand("Performance.getMetrics", Map.of());
        for (Object metric : (List<?>) measured.get("metrics")) {
            Map<?, ?> named = (Map<?, ?>) metric;
            work.put((String) named.get("name"), ((Number) named.get("value")).longValue());
        }
        ((Map<?, ?>) browser.driver().executeScript("return window.counted"))
                .forEach((name, count) -> work.put((String) name, ((Number) count).longValue()));
        return work;
    }

    @Override
    public void close() {
        browser.driver().executeCdpCommand("Page.removeScriptToEvaluateOnNewDocument", script);
    }
}
