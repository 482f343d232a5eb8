package org.driftward.dashboard.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * One table of the read model and the statement that keeps a record in it if it is newer.
 *
 * @param order of writing; every writer uses the same, so that two of them never wait for each
 *     other
 * @param binder binds the statement's parameters
 */
record Table<T>(String upsert, Comparator<T> order, Binder<T> binder) {

  @FunctionalInterface
  interface Binder<T> {
    void bind(PreparedBatch row, T value);
  }

  /**
   * @return the records that changed the table
   */
  List<T> keep(Handle handle, List<T> records) {
    if (records.isEmpty()) {
      return List.of();
    }
    var ordered = records.stream().sorted(order).toList();
    var changed = new ArrayList<T>();
    try (var batch = handle.prepareBatch(upsert)) {
      for (T value : ordered) {
        binder.bind(batch, value);
        batch.add();
      }
      int[] counts = batch.execute();
      for (int i = 0; i < counts.length; i++) {
        if (counts[i] != 0) {
          changed.add(ordered.get(i));
        }
      }
    }
    return changed;
  }
}
