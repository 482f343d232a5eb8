package org.driftward.alerts.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Decision;
import org.driftward.alerts.core.episode.Happening;

/**
 * Courses that this transaction has locked, and what has been decided about them so far. Kept when
 * the transaction ends. Used by one thread.
 *
 * @see Courses
 */
public final class Session {

  private final Instant now;
  private final Map<String, Course> courses;
  private final Set<String> changed = new HashSet<>();
  private final List<Happening> happenings = new ArrayList<>();

  Session(Instant now, Map<String, Course> courses) {
    this.now = now;
    this.courses = new TreeMap<>(courses);
  }

  /** Wall clock of the transaction, to the millisecond. */
  public Instant now() {
    return now;
  }

  /**
   * @throws IllegalArgumentException if the transaction has not locked the encounter
   */
  public Course course(String encounter) {
    var course = courses.get(encounter);
    if (course == null) {
      throw new IllegalArgumentException("an encounter that is not locked");
    }
    return course;
  }

  /** Whether the transaction has locked the encounter. */
  boolean knows(String encounter) {
    return courses.containsKey(encounter);
  }

  public void take(Decision decision) {
    var encounter = decision.course().encounter();
    if (!decision.course().equals(course(encounter))) {
      courses.put(encounter, decision.course());
      changed.add(encounter);
    }
    happenings.addAll(decision.happenings());
  }

  /** Keeps something that is no change of a course. */
  public void record(Happening happening) {
    happenings.add(happening);
  }

  /** Writes the course again even if nothing was decided, and with it its deadlines. */
  public void refresh(String encounter) {
    changed.add(course(encounter).encounter());
  }

  List<Course> changed() {
    return courses.values().stream().filter(c -> changed.contains(c.encounter())).toList();
  }

  List<Happening> happenings() {
    return happenings;
  }
}
