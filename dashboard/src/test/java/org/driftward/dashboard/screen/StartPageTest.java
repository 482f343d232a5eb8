package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.AccountRole;
import org.junit.jupiter.api.Test;

class StartPageTest {

  @Test
  void shouldLeadTheTeamToTheQueue() {
    assertThat(StartPage.of(reader(AccountRole.RESPONSE), List.of("alder", "birch")))
        .contains("/response");
  }

  @Test
  void shouldLeadOthersToTheirWard() {
    assertThat(StartPage.of(reader(AccountRole.CHARGE), List.of("alder"))).contains("/wards/alder");
  }

  @Test
  void shouldLeadThoseWithManyWardsToTheList() {
    assertThat(StartPage.of(reader(AccountRole.MANAGER), List.of("alder", "birch")))
        .contains("/wards");
  }

  @Test
  void shouldLeadNowhereWithoutAWard() {
    assertThat(StartPage.of(reader(AccountRole.CHARGE), List.of())).isEmpty();
  }

  @Test
  void shouldLeadToIntakeWhereThereAreFeedsToLookAfterAndNoWard() {
    assertThat(StartPage.of(reader(AccountRole.ADMIN), List.of())).contains("/intake");
    assertThat(StartPage.of(reader(AccountRole.INTEGRATION), List.of())).contains("/intake");
  }

  @Test
  void shouldKeepAnOddWardNameInOnePathSegment() {
    assertThat(StartPage.board("4 b/ü")).isEqualTo("/wards/4%20b%2F%C3%BC");
  }

  private static Reader reader(String role) {
    return new Reader("somebody", Set.of(role));
  }
}
