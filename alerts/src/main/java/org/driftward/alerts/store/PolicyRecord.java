package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.Map;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.journal.CanonicalJson;
import org.driftward.alerts.core.journal.Line;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ground.store.Database;

/** Keeps in the journal under which policy decisions were made. */
@Singleton
public class PolicyRecord {

  private static final String SUBJECT = "policy/escalation";

  private final Database database;
  private final JournalTable journal;
  private final PolicyFile file;
  private final Courses courses;

  public PolicyRecord(Database database, JournalTable journal, PolicyFile file, Courses courses) {
    this.database = database;
    this.journal = journal;
    this.file = file;
    this.courses = courses;
  }

  /** Writes an entry if the policy is not the one that was written last. */
  public void keep() {
    var body = CanonicalJson.write(Map.of("version", file.policy().version(), "text", file.text()));
    var line = new Line(SUBJECT, "adopted", Happening.SERVICE, body);
    database.transaction(
        handle -> {
          // The end of the chain is locked first, so that two instances write one entry.
          handle.execute("SELECT 1 FROM alerts.journal_head FOR UPDATE");
          var last =
              handle
                  .createQuery(
                      "SELECT body FROM alerts.journal WHERE subject = :subject"
                          + " ORDER BY sequence DESC LIMIT 1")
                  .bind("subject", SUBJECT)
                  .mapTo(String.class)
                  .findOne();
          if (last.isEmpty() || !last.get().equals(body)) {
            journal.append(handle, line, courses.now());
          }
          return null;
        });
  }
}
