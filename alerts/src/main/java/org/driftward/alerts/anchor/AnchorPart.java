package org.driftward.alerts.anchor;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.Optional;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Journal;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.work.Repeating;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;

/**
 * Keeps, from time to time, what the end of the journal is: in the anchor file and in the log. A
 * hospital that sends its log elsewhere has the anchors there as well.
 */
@Singleton
public class AnchorPart implements RolePart {

  private static final Logger LOG = Logger.getLogger(AnchorPart.class);
  private static final String FILE = "journal-anchors.ndjson";

  private final Journal journal;
  private final AlertsConfig config;
  private final Clock clock;
  private final Optional<AnchorFile> file;
  private final Repeating work;

  public AnchorPart(Journal journal, AlertsConfig config, Clock clock) {
    this.journal = journal;
    this.config = config;
    this.clock = clock;
    this.file = config.anchors().folder().map(folder -> new AnchorFile(folder.resolve(FILE)));
    this.work = new Repeating(name(), config.longestBackOff(), this::round);
  }

  private void round() throws InterruptedException {
    keep();
    Thread.sleep(config.anchors().every().toMillis());
  }

  private void keep() {
    if (file.isEmpty()) {
      return;
    }
    journal
        .last()
        .flatMap(last -> file.get().append(last, clock.instant()))
        .ifPresent(AnchorPart::log);
  }

  private static void log(Anchor anchor) {
    LOG.infof("Journal anchor: sequence %d, head %s", anchor.sequence(), anchor.head());
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return "journal-anchors";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
