package org.driftward.dashboard.web.page;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.dashboard.core.FeedReader;
import org.driftward.dashboard.core.WardPapers;
import org.driftward.dashboard.core.WardReader;

/** Makes the pure gatherer of what goes on paper. */
@Singleton
class WardPaperBeans {

  @Produces
  @Singleton
  WardPapers papers(WardReader reader, FeedReader feeds, ShiftDesk shifts, CallDesk calls) {
    return new WardPapers(reader, feeds, shifts, calls);
  }
}
