package org.driftward.dashboard.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.util.Set;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.WardPapers;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.DowntimeScreen;
import org.driftward.dashboard.screen.Findings;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.WardScope;

/**
 * Keeps a copy of every ward as a file that needs nothing but a browser, for when the system is
 * down. A copy is replaced as a whole and says as of when it is; the old one stays while the new
 * one cannot be made.
 */
@Singleton
public class DowntimeCopies extends RepeatingPart implements RolePart {

  private static final String NAME = "downtime-copies";
  private static final Set<PosixFilePermission> OWNER_ONLY =
      PosixFilePermissions.fromString("rw-------");

  private final WardReader wards;
  private final WardPapers papers;
  private final DashboardConfig.Downtime settings;
  private final Clock clock;
  private final Findings findings = new Findings(Catalogue.shipped());
  private final Quarantine quarantine;

  public DowntimeCopies(
      WardReader wards,
      WardPapers papers,
      DashboardConfig config,
      Quarantine quarantine,
      Clock clock) {
    super(NAME);
    this.quarantine = quarantine;
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

  /**
   * Makes the copy of every ward now. One ward's failure keeps no other from its copy.
   *
   * @return how many copies were not made, and are old or missing
   * @throws RuntimeException if none could be made
   */
  public int make() {
    var style = style();
    var lines = wards.wards(WardScope.EVERY_WARD);
    int old = 0;
    for (var line : lines) {
      try {
        var screen = DowntimeScreen.of(papers.of(line.ward()), findings, clock.getZone());
        keep(line.ward(), Copies.downtimeCopy(screen, style).render());
      } catch (RuntimeException | StackOverflowError e) {
        if (++old == lines.size()) {
          throw e;
        }
        setAside(line.ward(), e);
      }
    }
    return old;
  }

  private void setAside(String ward, Throwable why) {
    var item =
        SetAside.row("downtime", ward, NAME, null, ward, "The copy for downtime is old.")
            .toldFor(settings.every().multipliedBy(2));
    quarantine.keep(item, null, why);
  }

  @Override
  public Duration run() {
    int old = make();
    if (old > 0) {
      say(Condition.but("the copies of " + old + " wards are old"));
    }
    return settings.every();
  }

  private void keep(String ward, String html) {
    var name = CopyName.of(ward);
    var next = settings.folder().resolve(name + ".next");
    try {
      Files.createDirectories(settings.folder());
      Files.writeString(next, html);
      if (Files.getFileStore(next).supportsFileAttributeView("posix")) {
        Files.setPosixFilePermissions(next, OWNER_ONLY);
      }
      Files.move(
          next,
          settings.folder().resolve(name),
          StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String style() {
    try (var in =
        DowntimeCopies.class.getResourceAsStream("/META-INF/resources/assets/paper.css")) {
      if (in == null) {
        throw new IOException("paper.css is not in the application");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }
}
