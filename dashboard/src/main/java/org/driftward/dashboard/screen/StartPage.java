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
   * The response team starts at the queue, a person of one ward on its board, one of several at the
   * list of them, one who looks after feeds and sees no ward at intake.
   *
   * @param wards that the person sees
   * @return a path, or empty where there is nothing to show
   */
  public static Optional<String> of(Reader reader, List<String> wards) {
    if (reader.has(AccountRole.RESPONSE)) {
      return Optional.of("/response");
    }
    return switch (wards.size()) {
      case 0 -> reader.integrates() ? Optional.of("/intake") : Optional.empty();
      case 1 -> Optional.of(board(wards.get(0)));
      default -> Optional.of("/wards");
    };
  }

  /** Path of a ward's board. */
  public static String board(String ward) {
    return "/wards/" + URLEncoder.encode(ward, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
