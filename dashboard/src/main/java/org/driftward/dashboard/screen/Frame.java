package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.driftward.dashboard.contract.Setting;
import org.jspecify.annotations.Nullable;

/**
 * What stands round every page.
 *
 * @param now ward time when the page was made
 * @param zone the hospital's
 * @param person as people know them, or null before sign-in
 * @param links where this person may go
 * @param here path of the page
 * @param token proof that a form came from one of our pages
 * @param version of the style sheets and scripts, so that a browser never mixes old and new
 * @param account sign-in name of the person, or null before sign-in: what the browser keeps on the
 *     device is kept under it
 */
public record Frame(
    Setting setting,
    Instant now,
    ZoneId zone,
    @Nullable String person,
    List<Link> links,
    String here,
    String token,
    String version,
    @Nullable String account) {

  /** A page that keeps nothing on the device. */
  public Frame(
      Setting setting,
      Instant now,
      ZoneId zone,
      @Nullable String person,
      List<Link> links,
      String here,
      String token,
      String version) {
    this(setting, now, zone, person, links, here, token, version, null);
  }

  /** A way to another page. */
  public record Link(String path, String words) {}

  /** The same frame at a later moment. */
  public Frame at(Instant later) {
    return new Frame(setting, later, zone, person, links, here, token, version, account);
  }

  public String time() {
    return time(now);
  }

  public String time(Instant time) {
    return Wording.time(time, now, zone);
  }

  /** Seconds that the hospital's clock is ahead of UTC. */
  public int offset() {
    return zone.getRules().getOffset(now).getTotalSeconds();
  }

  /** How much faster than life the ward's clock runs, or empty at the ordinary rate. */
  public String pace() {
    return setting.clockRate() == 1
        ? ""
        : "Time runs " + Wording.number(setting.clockRate(), 1) + " times as fast.";
  }
}
