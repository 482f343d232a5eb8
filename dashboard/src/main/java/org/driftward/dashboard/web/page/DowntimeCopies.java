package org.driftward.dashboard.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.WardPapers;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.DowntimeScreen;
import org.driftward.dashboard.screen.Findings;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.WardScope;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Keeps a copy of every ward as a file that needs nothing but a browser, for when the system is
 * down. A copy is replaced as a whole and says as of when it is; the old one stays while the new
 * one cannot be made.
 */
@Singleton
public class DowntimeCopies implements RolePart {

  private static final Logger LOG = Logger.getLogger(DowntimeCopies.class);
  private static final Set<PosixFilePermission> OWNER_ONLY =
      PosixFilePermissions.fromString("rw-------");

  private final WardReader wards;
  private final WardPapers papers;
  private final DashboardConfig.Downtime settings;
  private final Clock clock;
  private final Findings findings = new Findings(Catalogue.shipped());
  private volatile Condition condition = Condition.ill("not started");
  private @Nullable ScheduledExecutorService work;

  public DowntimeCopies(WardReader wards, WardPapers papers, DashboardConfig config, Clock clock) {
    this.wards = wards;
    this.papers = papers;
    this.settings = config.downtime();
    this.clock = clock;
  }

  @CheckedTemplate(basePath = "")
  static final class Copies {
    private Copies() {}

    static native TemplateInstance downtimeCopy(DowntimeScreen paper, String style);
  }

  /** Makes the copy of every ward now. */
  public void make() {
    try {
      Files.createDirectories(settings.folder());
      var style = style();
      for (var line : wards.wards(WardScope.EVERY_WARD)) {
        var screen = DowntimeScreen.of(papers.of(line.ward()), findings, clock.getZone());
        keep(line.ward(), Copies.downtimeCopy(screen, style).render());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void keep(String ward, String html) throws IOException {
    var name = URLEncoder.encode(ward, StandardCharsets.UTF_8) + ".html";
    var next = settings.folder().resolve(name + ".next");
    Files.writeString(next, html);
    if (Files.getFileStore(next).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(next, OWNER_ONLY);
    }
    Files.move(
        next,
        settings.folder().resolve(name),
        StandardCopyOption.ATOMIC_MOVE,
        StandardCopyOption.REPLACE_EXISTING);
  }

  private static String style() throws IOException {
    try (var in =
        DowntimeCopies.class.getResourceAsStream("/META-INF/resources/assets/paper.css")) {
      if (in == null) {
        throw new IOException("paper.css is not in the application");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private void round() {
    try {
      make();
      condition = Condition.ok();
    } catch (RuntimeException e) {
      // The message may name a ward; the class says what is away.
      condition = Condition.ill("the copies are old: " + e.getClass().getSimpleName());
      LOG.warnf("The copies for downtime were not made: %s", e.getClass().getName());
    }
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }

  @Override
  public String name() {
    return "downtime-copies";
  }

  @Override
  public void start() {
    var started =
        Executors.newSingleThreadScheduledExecutor(
            task -> {
              var thread = new Thread(task, "driftward-" + name());
              thread.setDaemon(true);
              return thread;
            });
    condition = Condition.ok();
    // round() keeps every failure as a condition, so nothing is lost with the future.
    var unused =
        started.scheduleWithFixedDelay(
            this::round, 0, settings.every().toMillis(), TimeUnit.MILLISECONDS);
    work = started;
  }

  @Override
  public void stop() {
    var running = work;
    if (running != null) {
      running.shutdownNow();
    }
    work = null;
    condition = Condition.ill("stopped");
  }

  @Override
  public Condition condition() {
    return condition;
  }
}
