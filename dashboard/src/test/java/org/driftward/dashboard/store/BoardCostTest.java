package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;

/** Promise 8 of the design: the cost of a board does not grow with the history of its patients. */
class BoardCostTest {

  private static final int BEDS = 20;
  private static final Pattern BUFFERS = Pattern.compile("shared hit=(\\d+)(?: read=(\\d+))?");

  @Test
  void shouldTouchAsManyPagesForAHundredTimesTheHistory() {
    DataSource database = DashboardDatabase.emptied();
    fill(new ReadModel(new Database(database)));
    prolong(20);
    int few = pages(database);
    prolong(2000);
    int many = pages(database);

    // An index grows by a level, not by the length of what it lists.
    assertThat(many).isLessThanOrEqualTo(few * 2);
  }

  private static void fill(ReadModel model) {
    var encounters = new ArrayList<Encounter>();
    var snapshots = new ArrayList<Snapshot>();
    for (int bed = 1; bed <= BEDS; bed++) {
      encounters.add(encounter("V" + bed, "W1", Integer.toString(bed), 1));
      snapshots.add(snapshot("V" + bed, "A0", 1, 0, 3, 3));
    }
    model.keep(new Batch(encounters, List.of(), List.of(), snapshots, List.of()));
  }

  /** Repeats each patient's first snapshot, a minute apart, until there are so many. */
  private static void prolong(int snapshots) {
    DashboardDatabase.run(
        """
        INSERT INTO dashboard.snapshot
        SELECT encounter, 'A' || n, 1 + n, as_of + n * interval '1 minute', latest, withdrawn,
          score, low, high, body
        FROM dashboard.snapshot, generate_series(1, %d) n WHERE assessment = 'A0'
        ON CONFLICT DO NOTHING
        """
            .formatted(snapshots));
    DashboardDatabase.run("VACUUM ANALYZE dashboard.snapshot");
  }

  private static int pages(DataSource database) {
    var plan =
        Jdbi.create(database)
            .withHandle(
                handle ->
                    handle
                        .createQuery(
                            "EXPLAIN (ANALYZE, BUFFERS) "
                                + KnownRows.SELECT
                                + " WHERE e.present AND e.ward = 'W1'")
                        .mapTo(String.class)
                        .list());
    // The first line of buffers is the root's: the sum over the whole statement.
    for (String line : plan) {
      var found = BUFFERS.matcher(line);
      if (found.find()) {
        int read = found.group(2) == null ? 0 : Integer.parseInt(found.group(2));
        return Integer.parseInt(found.group(1)) + read;
      }
    }
    throw new IllegalStateException("a plan without buffers");
  }
}
