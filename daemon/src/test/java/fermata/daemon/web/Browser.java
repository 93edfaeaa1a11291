package fermata.daemon.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;
import tools.jackson.databind.ObjectMapper;

/** A real browser without a window, that remembers every request and every complaint. */
final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final ObjectMapper JSON = new ObjectMapper();

    private final ChromeDriver driver;

    Browser() {
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(find("chromium", "/usr/bin/chromium", "/usr/bin/chromium-browser"));
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                // A name by which another machine would call this one.
                "--host-resolver-rules=MAP galley.local 127.0.0.1",
                "--user-data-dir=" + freshFolder());
        options.setCapability("goog:loggingPrefs", logs);
        Path driverBinary = Path.of(find("chromium-driver", "/usr/bin/chromedriver"));
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(driverBinary.toFile())
                        .build(),
                options);
    }

    /** A page that nobody looks at is untested, so a missing browser is a failure and says how to mend it. */
    private static String find(String debianPackage, String... places) {
        return Stream.of(places)
                .filter(place -> Files.isExecutable(Path.of(place)))
                .findFirst()
                .orElseThrow(() -> new AssertionError("the pages are tested in a real browser, and there is none at "
                        + String.join(" or ", places) + ": run ./verify, or apt-get install " + debianPackage));
    }

    private static Path freshFolder() {
        try {
            return Files.createTempDirectory("pages-browser");
        } catch (IOException failure) {
            throw new UncheckedIOException("cannot make a folder for the browser", failure);
        }
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Sets the window's inner size and the colour scheme and motion the person asked for. */
    Browser as(int width, int height, String scheme, String motion) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "features",
                        List.of(
                                Map.of("name", "prefers-color-scheme", "value", scheme),
                                Map.of("name", "prefers-reduced-motion", "value", motion))));
        return this;
    }

    /** Opens a page afresh and waits for what it draws last. */
    Browser open(String address, String awaited) {
        driver.get("about:blank");
        driver.get(address);
        waitFor(awaited);
        return this;
    }

    WebElement waitFor(String selector) {
        return new WebDriverWait(driver, PATIENCE)
                .until(at -> at.findElements(By.cssSelector(selector)).stream()
                        .findFirst()
                        .orElse(null));
    }

    void waitUntil(String what, String script) {
        new WebDriverWait(driver, PATIENCE)
                .withMessage(what)
                .until(at -> Objects.equals(driver.executeScript(script), true));
    }

    /** How far the page runs past the window. Not against innerWidth, which grows with the page on a phone. */
    int pixelsToScrollSideways() {
        return ((Number) driver.executeScript(
                        "const root = document.documentElement; return root.scrollWidth - root.clientWidth"))
                .intValue();
    }

    WebElement one(String selector) {
        return driver.findElement(By.cssSelector(selector));
    }

    List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    /** Presses keys where the focus is. */
    void press(CharSequence... keys) {
        for (CharSequence key : keys) {
            new Actions(driver).sendKeys(key).perform();
        }
    }

    void pressWithShift(Keys key) {
        new Actions(driver).keyDown(Keys.SHIFT).sendKeys(key).keyUp(Keys.SHIFT).perform();
    }

    /** Presses Tab until the focus is on what the selector names, as a person without a pointer does. */
    void tabTo(String selector) {
        for (int presses = 0; presses < 60; presses++) {
            press(Keys.TAB);
            if (Objects.equals(
                    driver.executeScript("return document.activeElement.matches(arguments[0])", selector), true)) {
                return;
            }
        }
        throw new AssertionError("sixty presses of Tab never reached " + selector);
    }

    /** Errors and warnings on the console since last asked: failed loads, exceptions, policy violations. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Addresses on any network asked for since last asked; what the browser opens inside itself is none. */
    List<String> requests() {
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(entry -> JSON.readTree(entry.getMessage()).path("message"))
                .filter(message -> message.path("method").asString().equals("Network.requestWillBeSent"))
                .map(message -> message.path("params").path("request"))
                .map(request -> request.path("url").asString())
                .filter(address -> address.matches("(https?|wss?|ftp):.*"))
                .toList();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
