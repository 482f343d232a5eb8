package org.driftward.scoring.core.timeline;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * A reader of snapshots that does what the contract asks: of two snapshots of one assessment the
 * higher sequence counts, and so does the newest that says it is the latest picture.
 */
public final class Listener {

  private final Map<String, Map<String, Snapshot>> heard = new TreeMap<>();
  private final Map<String, Snapshot> latest = new HashMap<>();

  public void hear(Snapshot snapshot) {
    var before = last(snapshot.encounter());
    if (before != null && before.sequence() + 1 != snapshot.sequence()) {
      throw new AssertionError("sequence " + snapshot.sequence() + " after " + before.sequence());
    }
    heard
        .computeIfAbsent(snapshot.encounter(), id -> new TreeMap<>())
        .put(snapshot.assessment(), snapshot);
    if (snapshot.latest()) {
      latest.put(snapshot.encounter(), snapshot);
    } else if (snapshot.withdrawn()) {
      latest.computeIfPresent(
          snapshot.encounter(),
          (id, newest) -> newest.assessment().equals(snapshot.assessment()) ? null : newest);
    }
  }

  private @Nullable Snapshot last(String encounter) {
    return heard.getOrDefault(encounter, Map.of()).values().stream()
        .reduce((a, b) -> a.sequence() > b.sequence() ? a : b)
        .orElse(null);
  }

  /** Of the newest snapshot of the encounter; 0 without any. */
  long lastSequence(String encounter) {
    var last = last(encounter);
    return last == null ? 0 : last.sequence();
  }

  /** What is known in the end, without what is about delivery. */
  public Map<String, Map<String, Snapshot>> known() {
    var known = new TreeMap<String, Map<String, Snapshot>>();
    heard.forEach(
        (encounter, snapshots) -> {
          var bare = new TreeMap<String, Snapshot>();
          snapshots.forEach((id, snapshot) -> bare.put(id, bare(snapshot)));
          known.put(encounter, bare);
        });
    return known;
  }

  /** The newest picture of each encounter that has one. */
  public Map<String, Snapshot> latest() {
    var bare = new TreeMap<String, Snapshot>();
    latest.forEach((encounter, snapshot) -> bare.put(encounter, bare(snapshot)));
    return bare;
  }

  public static Snapshot bare(Snapshot snapshot) {
    return snapshot.sent(0, false, null);
  }
}
