package org.driftward.dashboard.web.page;

import io.quarkus.csrf.reactive.runtime.CsrfTokenParameterProvider;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.contract.Setting;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.Frame.Link;
import org.driftward.dashboard.screen.StartPage;

/** Makes what stands round a page. Needs an HTTP request: the form token belongs to it. */
@ApplicationScoped
class Frames {

  /** With more wards than this, one link leads to the list of them. */
  private static final int WARDS_AS_LINKS = 4;

  private final Setting setting;
  private final Clock clock;
  private final WardReader wards;
  private final CsrfTokenParameterProvider tokens;
  private final Assets assets;

  Frames(
      Setting setting,
      Clock clock,
      WardReader wards,
      CsrfTokenParameterProvider tokens,
      Assets assets) {
    this.setting = setting;
    this.clock = clock;
    this.wards = wards;
    this.tokens = tokens;
    this.assets = assets;
  }

  Frame of(Visit visit, String here) {
    return new Frame(
        setting,
        clock.instant(),
        clock.getZone(),
        visit.name(),
        links(visit),
        here,
        tokens.getToken(),
        assets.version(),
        visit.account());
  }

  /** Before sign-in. */
  Frame ofStranger(String here) {
    return new Frame(
        setting,
        clock.instant(),
        clock.getZone(),
        null,
        List.of(),
        here,
        tokens.getToken(),
        assets.version());
  }

  private List<Link> links(Visit visit) {
    var links = new ArrayList<Link>();
    var seen = wards.wards(visit.scope());
    if (seen.size() > WARDS_AS_LINKS) {
      links.add(new Link("/wards", "Wards"));
    } else {
      for (WardLine line : seen) {
        links.add(new Link(StartPage.board(line.ward()), "Ward " + line.ward()));
      }
    }
    if (visit.reader().cares()) {
      links.add(new Link("/response", "Response"));
    }
    return links;
  }
}
