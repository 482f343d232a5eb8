package org.driftward.deploy.whole;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Starts the browser when the first test asks for it; it ends with the last. */
final class Chromium implements ExecutionCondition, ParameterResolver {

  private static final Path PROGRAM = Path.of("/usr/bin/chromium");

  /** It talks to loopback only: nothing of its own goes out. */
  private static final List<String> OPTIONS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    return Files.isExecutable(PROGRAM)
        ? ConditionEvaluationResult.enabled("chromium is installed")
        : ConditionEvaluationResult.disabled("chromium is not installed");
  }

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    return parameter.getParameter().getType() == Browser.class;
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
    return context
        .getRoot()
        .getStore(Namespace.create(Chromium.class))
        .computeIfAbsent("browser", key -> Running.start(), Running.class)
        .browser();
  }

  /** The browser and what drives it. JUnit closes it. */
  record Running(Playwright playwright, Browser browser) implements AutoCloseable {

    static Running start() {
      var playwright =
          Playwright.create(
              new Playwright.CreateOptions()
                  .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
      var options = new BrowserType.LaunchOptions().setExecutablePath(PROGRAM).setArgs(OPTIONS);
      return new Running(playwright, playwright.chromium().launch(options));
    }

    @Override
    public void close() {
      playwright.close();
    }
  }
}
