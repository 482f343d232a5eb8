package org.driftward.dashboard.security;

import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Decides whether a request that changes something may come from where it comes from.
 *
 * <p>A browser sends our cookie, or a remembered password, with every request to us, whichever site
 * made it send one. It says so itself: {@code Sec-Fetch-Site} (W3C Fetch Metadata) or {@code
 * Origin} (RFC 6454). Programs send neither. What sends our cookie and neither of the two has to
 * show a header that no foreign page can add without asking us first.
 *
 * @param fetchSite {@code Sec-Fetch-Site}, or null
 * @param origin {@code Origin}, or null
 * @param host the host and port the request was sent to, or null
 * @param session whether it carries our session cookie
 * @param ownHeader whether it carries {@value #OWN_HEADER}
 */
record SameOrigin(
    String method,
    @Nullable String fetchSite,
    @Nullable String origin,
    @Nullable String host,
    boolean session,
    boolean ownHeader) {

  static final String OWN_HEADER = "X-Driftward-Client";

  private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");

  boolean allowed() {
    if (SAFE.contains(method)) {
      return true;
    }
    if (fetchSite != null) {
      return fetchSite.equals("same-origin") || fetchSite.equals("none");
    }
    if (origin != null) {
      return host != null && authority(origin).equals(host.toLowerCase(Locale.ROOT));
    }
    return !session || ownHeader;
  }

  /** Host and port; the scheme is left off, since a proxy may end TLS before us. */
  private static String authority(String origin) {
    int at = origin.indexOf("://");
    return at < 0 ? "" : origin.substring(at + 3).toLowerCase(Locale.ROOT);
  }
}
