package org.driftward.dashboard.web.page;

import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.dashboard.screen.Reader;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/**
 * Who asks for a page, kept for as long as the page lives.
 *
 * @param name as people know them
 * @param scope the wards they see
 */
record Visit(Reader reader, String name, WardScope scope) {

  static Visit of(Viewer viewer) {
    return new Visit(new Reader(viewer.account(), viewer.roles()), viewer.name(), viewer.scope());
  }

  String account() {
    return reader.account();
  }

  Actor actor() {
    return new Actor(account(), name, reader.roles());
  }

  /** The wards to look at, or null for every ward. */
  @Nullable Set<String> wards() {
    return scope.all() ? null : scope.wards();
  }

  boolean sees(String ward) {
    return scope.sees(ward);
  }
}
