package org.driftward.dashboard.store;

import jakarta.inject.Singleton;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.driftward.dashboard.core.Board.Unreadable;
import org.driftward.dashboard.core.SetAsideReader;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;
import org.driftward.ground.store.Quarantine.Told;
import org.jspecify.annotations.Nullable;

/** {@link SetAsideReader} by the quarantine, and where the patients it is about lie now. */
@Singleton
public class StoredSetAside implements SetAsideReader {

  private final Database database;
  private final Quarantine quarantine;

  public StoredSetAside(Database database, Quarantine quarantine) {
    this.database = database;
    this.quarantine = quarantine;
  }

  @Override
  public List<Missing> missing() {
    var told = quarantine.told();
    var places = places(told.stream().map(Told::subject).filter(Objects::nonNull).toList());
    return told.stream().map(one -> missing(one, places.get(one.subject()))).toList();
  }

  private static Missing missing(Told told, @Nullable Unreadable place) {
    return place == null
        ? new Missing(told.means(), told.subject(), told.area(), null)
        : new Missing(told.means(), told.subject(), place.ward(), place.bed());
  }

  private Map<String, Unreadable> places(List<String> encounters) {
    var places = new HashMap<String, Unreadable>();
    if (!encounters.isEmpty()) {
      database.use(
          handle ->
              handle
                  .createQuery(
                      "SELECT encounter, ward, body->'stays'->-1->>'bed' AS bed"
                          + " FROM dashboard.encounter WHERE encounter = ANY (:encounters)")
                  .bindArray("encounters", String.class, encounters)
                  .map(
                      (row, context) ->
                          new Unreadable(
                              row.getString("encounter"),
                              row.getString("ward"),
                              row.getString("bed")))
                  .forEach(place -> places.put(place.encounter(), place)));
    }
    return places;
  }
}
