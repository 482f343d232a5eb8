package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/** What is being said: findings named, places, values. Filled while the text is gone through. */
final class Statement {

  /**
   * A value of one finding.
   *
   * @param implied whether the finding's name stands elsewhere
   * @param usual whether it says that nothing is wrong, and so means all places
   */
  record Valued(FindingValue value, Mention mention, boolean implied, boolean usual) {}

  /** A finding named, by the codes that it may be. */
  record Topic(Mention mention, Set<String> codes, boolean denied) {}

  final List<Topic> topics = new ArrayList<>();
  final List<Place> places = new ArrayList<>();
  final Map<String, Valued> values = new LinkedHashMap<>();
  final Set<String> aspects = new HashSet<>();

  /** Values whose finding was not named yet: "fine crackles". */
  final List<Mention> waiting = new ArrayList<>();

  /** What the waiting values wait for. */
  @Nullable Mention expected;

  boolean everywhere;

  /** Whether the topics come from the statement before. */
  boolean carried;

  /** The statement before it in the sentence; null where it is the first. */
  @Nullable Statement before;

  /** Whether a comma stands between it and the one before. */
  boolean afterComma;

  boolean placed() {
    return !places.isEmpty() || everywhere;
  }

  boolean empty() {
    return topics.isEmpty() && places.isEmpty() && values.isEmpty() && waiting.isEmpty();
  }
}
