package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ground.store.Database;
import org.driftward.scoring.contract.Snapshot;
import org.jdbi.v3.core.Handle;

/**
 * Writes the read model. A record is kept only if its version is above the one kept, so any order
 * and repetition of the topics ends in the same rows. Thread-safe, blocking.
 */
@ApplicationScoped
public class ReadModel {

  /** The channel that carries the id of a ward whose board may look different now. */
  public static final String CHANNEL = "driftward_ward";

  private final Database database;

  public ReadModel(Database database) {
    this.database = database;
  }

  /**
   * Keeps a batch in one transaction and tells every listener which wards it touched, the ward a
   * patient has left among them.
   *
   * @return the snapshots that were news; they are visible to every reader now
   */
  public List<Snapshot> keep(Batch batch) {
    return database.transaction(
        handle -> {
          var touched = batch.touched();
          var wards = wardsOf(handle, touched);
          Tables.ENCOUNTER.keep(handle, batch.encounters());
          Tables.CARE_PLAN.keep(handle, batch.carePlans());
          Tables.ASSESSMENT.keep(handle, batch.assessments());
          var news = Tables.SNAPSHOT.keep(handle, batch.snapshots());
          Tables.EPISODE.keep(
              handle, batch.episodes().stream().map(EpisodeChange::episode).toList());
          Tables.EPISODE_CHANGE.keep(handle, batch.episodes());
          wards.addAll(wardsOf(handle, touched));
          tell(handle, wards);
          return news;
        });
  }

  private static Set<String> wardsOf(Handle handle, Set<String> encounters) {
    return new TreeSet<>(
        handle
            .createQuery("SELECT ward FROM dashboard.encounter WHERE encounter = ANY(:encounters)")
            .bindArray("encounters", String.class, encounters.toArray())
            .mapTo(String.class)
            .list());
  }

  private static void tell(Handle handle, Set<String> wards) {
    for (String ward : wards) {
      handle.execute("SELECT pg_notify(?, ?)", CHANNEL, ward);
    }
  }
}
