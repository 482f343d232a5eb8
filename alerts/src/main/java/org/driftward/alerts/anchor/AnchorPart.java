package org.driftward.alerts.anchor;

import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.Journal;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Keeps, from time to time, what the end of the journal is: in the anchor file and in the log. A
 * hospital that sends its log elsewhere has the anchors there as well.
 */
@Singleton
public class AnchorPart extends RepeatingPart implements RolePart {

  private static final Logger LOG = Logger.getLogger(AnchorPart.class);
  private static final String FILE = "journal-anchors.ndjson";

  private final Journal journal;
  private final AlertsConfig config;
  private final Clock clock;
  private @Nullable AnchorFile file;

  public AnchorPart(Journal journal, AlertsConfig config, Clock clock) {
    super("journal-anchors", config.longestBackOff());
    this.journal = journal;
    this.config = config;
    this.clock = clock;
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public Duration run() {
    keep();
    return config.anchors().every();
  }

  private void keep() {
    var kept = file;
    if (kept != null) {
      journal.last().flatMap(last -> kept.append(last, clock.instant())).ifPresent(AnchorPart::log);
    }
  }

  private static void log(Anchor anchor) {
    LOG.infof("Journal anchor: sequence %d, head %s", anchor.sequence(), anchor.head());
  }

  private static void say(@Nullable AnchorSigner signer) {
    if (signer == null) {
      LOG.info("Journal anchors are chained and not signed: no key is set");
    } else {
      LOG.infof("Journal anchors are signed; what checks them:%n%s", signer.publicKey());
    }
  }

  private static AnchorSigner signer(Path key) {
    try {
      return AnchorSigner.read(Files.readString(key));
    } catch (IOException | IllegalArgumentException e) {
      throw new IllegalStateException("the key of the anchors cannot be used: " + key, e);
    }
  }

  /**
   * @throws IllegalStateException if a key is set that cannot be used: whoever set it counts on it
   */
  @Override
  public void start() {
    var folder = config.anchors().folder();
    if (folder.isPresent()) {
      var signer = config.anchors().key().map(AnchorPart::signer).orElse(null);
      say(signer);
      file = new AnchorFile(folder.get().resolve(FILE), signer);
    }
    super.start();
  }
}
