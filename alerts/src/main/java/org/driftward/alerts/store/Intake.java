package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import org.driftward.alerts.core.episode.Decision;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** Takes what the stream brings, many records in one transaction, each at most once in effect. */
@Singleton
public class Intake {

  private final Courses courses;
  private final Escalation escalation;

  public Intake(Courses courses, Escalation escalation) {
    this.courses = courses;
    this.escalation = escalation;
  }

  /** One record of the stream. */
  public sealed interface News {
    String encounter();

    /** Every encounter about which it may decide something. */
    default List<String> touched() {
      return List.of(encounter());
    }

    record Picture(Snapshot snapshot) implements News {
      @Override
      public String encounter() {
        return snapshot.encounter();
      }
    }

    record BedMove(Encounter changed) implements News {
      @Override
      public String encounter() {
        return changed.id();
      }

      @Override
      public List<String> touched() {
        var survivor = changed.mergedInto();
        return survivor == null ? List.of(changed.id()) : List.of(changed.id(), survivor);
      }
    }
  }

  /**
   * All or nothing. Bed moves first, so that a picture meets its patient in the right bed.
   *
   * @return how many episode changes and other happenings followed
   */
  public int take(Collection<News> news) {
    var encounters = new TreeSet<>(news.stream().flatMap(one -> one.touched().stream()).toList());
    return courses.change(
        encounters,
        session -> {
          int happenings = 0;
          for (var one : inOrder(news)) {
            for (var decision : decide(session, one)) {
              session.take(decision);
              happenings += decision.happenings().size();
            }
          }
          return happenings;
        });
  }

  private static List<News> inOrder(Collection<News> news) {
    return news.stream().sorted((a, b) -> Boolean.compare(isPicture(a), isPicture(b))).toList();
  }

  private static boolean isPicture(@Nullable News news) {
    return news instanceof News.Picture;
  }

  private List<Decision> decide(Session session, News news) {
    var course = session.course(news.encounter());
    if (news instanceof News.Picture picture) {
      return List.of(escalation.picture(course, picture.snapshot(), session.now()));
    }
    var encounter = ((News.BedMove) news).changed();
    var survivor = encounter.mergedInto();
    return survivor == null
        ? List.of(escalation.moved(course, encounter, session.now()))
        : escalation.merged(course, session.course(survivor), encounter, session.now());
  }
}
