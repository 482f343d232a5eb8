package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.CodeDesk.Mapped;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeMapSource;
import org.driftward.ingest.core.mapping.CodeRow;
import org.driftward.ingest.core.mapping.CodeRows;
import org.driftward.ingest.core.mapping.CodeRules;
import org.driftward.ingest.core.mapping.CodeTable;
import org.jboss.logging.Logger;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * What people said that codes mean, in memory, as of the last {@link #refresh()}. Thread-safe.
 *
 * <p>Before it was read for the first time nobody is told that a code means nothing, because it may
 * well mean something: whoever asks waits for the database.
 */
@Singleton
public class StoredCodes implements CodeMapSource {

  private static final Logger LOG = Logger.getLogger(StoredCodes.class);

  private final IntakeStore database;
  private final CodeRules rules;
  private volatile @Nullable Version known;

  public StoredCodes(IntakeStore database, CodeRules rules) {
    this.database = database;
    this.rules = rules;
  }

  /** A map, and the last decision that is in it. */
  private record Version(long newest, CodeTable codes) {}

  /**
   * @throws UnavailableException if it was never read and the database does not answer
   */
  @Override
  public CodeMap codes() {
    var version = known;
    return (version == null ? refreshed() : version).codes();
  }

  /**
   * Reads again if anything was decided since.
   *
   * @throws UnavailableException if the database does not answer; what was known holds on
   */
  public void refresh() {
    var unused = refreshed();
  }

  private synchronized Version refreshed() {
    var before = known;
    var now =
        database.read(
            handle -> {
              long newest = CodeMappings.newest(handle);
              return before != null && before.newest() == newest
                  ? before
                  : new Version(newest, table(handle));
            });
    known = now;
    return now;
  }

  private CodeTable table(Handle handle) {
    var rows = new ArrayList<CodeRow>();
    for (var mapped : CodeMappings.inForce(handle)) {
      row(mapped, rows);
    }
    return CodeTable.of(rules, CodeRows.of(rows));
  }

  /** A row that a later catalogue contradicts means nothing any more; its code is listed again. */
  private void row(Mapped mapped, List<CodeRow> into) {
    var meant = mapped.decision().meant();
    if (meant == null) {
      return;
    }
    var row = CodeMappings.row(mapped.code(), meant);
    if (rules.fault(row).isPresent()) {
      LOG.errorf("The catalogue contradicts what was said of the code %s", mapped.code().id());
    } else {
      into.add(row);
    }
  }
}
