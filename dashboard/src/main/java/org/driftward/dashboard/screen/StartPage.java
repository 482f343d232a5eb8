package org.driftward.dashboard.screen;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.AccountRole;

/** Which page a person starts on. */
public final class StartPage {

  private StartPage() {}

  /**
   * A person who answers for several wards starts at the queue, everybody else on the first of
   * their wards.
   *
   * @param wards that the person sees, in order
   * @return a path, or empty where there is nothing to show
   */
  public static Optional<String> of(Reader reader, List<String> wards) {
    boolean team = reader.has(AccountRole.RESPONSE) && !reader.has(AccountRole.CHARGE);
    if (team || (wards.size() != 1 && reader.has(AccountRole.RESPONSE))) {
      return Optional.of("/response");
    }
    return wards.stream().findFirst().map(StartPage::board);
  }

  public static String board(String ward) {
    return "/wards/" + URLEncoder.encode(ward, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
