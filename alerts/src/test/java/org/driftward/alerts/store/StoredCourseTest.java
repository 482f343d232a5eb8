package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Map;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

/** The stored form of a course, of before degrees were kept and of now. */
class StoredCourseTest {

  /** As it was written by the version before: levels as words, suppressed rules as a list. */
  private static final String OF_BEFORE =
      """
      {"encounter":"V-1","place":{"ward":"heron","bed":"1","present":true,"version":2},"cursor":7,
       "recent":{"tallies":[{"set":"2026-01-05T03:00:00Z",
         "all":{"since":"2026-01-05T03:00:00Z","sets":1},"below":{},"drifting":{},"partial":0}]},
       "episodes":1,
       "episode":{"id":"E-V-1-1","version":2,"settled":2,"level":"high",
         "concerns":[{"rule":"score-news2","level":"high","seen":"medium","words":"NEWS2 5",
           "since":"2026-01-05T03:00:00Z","lasting":true}],
         "standing":{"state":"attended","owner":{"account":"c","name":"Nurse Two"},"rung":0,
           "due":"2026-01-05T04:00:00Z","since":"2026-01-05T03:10:00Z"},
         "alarmed":"2026-01-05T03:00:00Z","answered":{"score-news2":"high"},
         "openedAt":"2026-01-05T03:00:00Z","acknowledgedAt":"2026-01-05T03:10:00Z",
         "attendedAt":"2026-01-05T03:10:00Z"},
       "quiet":{"until":"2026-01-05T05:00:00Z","answered":{"single-heart-rate":"medium"}},
       "lateness":{"lastSet":"2026-01-05T03:00:00Z","due":"2026-01-05T04:00:00Z","interval":"PT1H",
         "step":0},
       "suppressed":["single-oxygen-saturation"],"planRuns":false}
      """;

  @Test
  void shouldReadACourseOfBeforeByLevelsAlone() {
    var course = Json.COURSE.read(OF_BEFORE);

    assertThat(course.episode().answered())
        .isEqualTo(Map.of("score-news2", new Severity(Level.HIGH, Map.of())));
    assertThat(course.episode().concerns().get(0).seen())
        .isEqualTo(new Severity(Level.MEDIUM, Map.of()));
    assertThat(course.quiet().answered().get("single-heart-rate").level()).isEqualTo(Level.MEDIUM);
    assertThat(course.lateness().lastSet()).isEqualTo(Instant.parse("2026-01-05T03:00:00Z"));
    assertThat(course.watch().newest()).isNull();
  }

  @Test
  void shouldReadWhatItWrites() {
    var course = Json.COURSE.read(OF_BEFORE);

    assertThat(Json.COURSE.read(Json.COURSE.text(course))).isEqualTo(course);
  }
}
