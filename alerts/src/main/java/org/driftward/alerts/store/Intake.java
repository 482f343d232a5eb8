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
    }
  }

  /**
   * All or nothing. Bed moves first, so that a picture meets its patient in the right bed.
   *
   * @return how many episode changes and other happenings followed
   */
  public int take(Collection<News> news) {
    var encounters = new TreeSet<>(news.stream().map(News::encounter).toList());
    return courses.change(
        encounters,
        session -> {
          int happenings = 0;
          for (var one : inOrder(news)) {
            var decision = decide(session, one);
            session.take(decision);
            happenings += decision.happenings().size();
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

  private Decision decide(Session session, News news) {
    var course = session.course(news.encounter());
    return news instanceof News.Picture picture
        ? escalation.picture(course, picture.snapshot(), session.now())
        : escalation.moved(course, ((News.BedMove) news).changed(), session.now());
  }
}
