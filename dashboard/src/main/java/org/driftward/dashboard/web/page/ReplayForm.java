package org.driftward.dashboard.web.page;

import java.time.ZoneId;
import java.util.List;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** What to replay: the ticked ones, or all that the filter finds. */
public class ReplayForm {

  /** The ticked refusals. */
  @RestForm public @Nullable List<String> refusal;

  /** {@code ticked} or {@code found}. */
  @RestForm public @Nullable String which;

  @RestForm public @Nullable String source;

  @RestForm public @Nullable String rule;

  @RestForm public @Nullable String from;

  @RestForm public @Nullable String to;

  boolean found() {
    return "found".equals(which);
  }

  List<String> ticked() {
    return refusal == null ? List.of() : refusal;
  }

  Filter filter(ZoneId zone) {
    return new Filter(
        RefusalQuery.source(source),
        RefusalQuery.words(rule),
        RefusalQuery.time(from, zone),
        RefusalQuery.time(to, zone),
        true,
        null);
  }
}
