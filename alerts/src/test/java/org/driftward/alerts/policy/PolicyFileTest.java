package org.driftward.alerts.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.definition.ScoreBooks;
import org.junit.jupiter.api.Test;

class PolicyFileTest {

  private static final PolicyFile SHIPPED = PolicyFile.shipped();

  /** Gupta 2017: a delay of 15 minutes or more went with higher mortality. */
  @Test
  void shouldStepUpWithinFifteenMinutesOnEveryRung() {
    for (var level : Level.values()) {
      assertThat(SHIPPED.policy().ladder().of(level).rungs())
          .allSatisfy(
              rung -> assertThat(rung.acknowledge()).isLessThanOrEqualTo(Duration.ofMinutes(15)));
    }
  }

  /** One paper's working definitions, not the RCP's chart: local policy. */
  @Test
  void shouldExpectAClinicianWithinHalfAnHourOrAnHour() {
    var ladder = SHIPPED.policy().ladder();

    assertThat(ladder.high().attend()).isEqualTo(Duration.ofMinutes(30));
    assertThat(ladder.medium().attend()).isEqualTo(Duration.ofMinutes(60));
  }

  @Test
  void shouldRefuseASettingItDoesNotKnow() {
    refused("partial: {", "partail: {", "partail");
  }

  @Test
  void shouldNameASettingThatIsMissing() {
    refused("longest-hold:", "longest-holt:", "longest-hold is missing");
  }

  @Test
  void shouldRefuseARungThatTheBoardDoesNotShow() {
    refused("[board, tone], acknowledge: PT10M", "[mail], acknowledge: PT10M", "board");
  }

  @Test
  void shouldRefuseAChannelItDoesNotKnow() {
    refused("[board, tone], acknowledge: PT10M", "[board, pigeon], acknowledge: PT10M", "pigeon");
  }

  @Test
  void shouldRefuseARecipientWithoutAnAddress() {
    refused("recipients: []", "recipients: [{audience: on-call, name: phone}]", "no address");
  }

  @Test
  void shouldRefuseALevelItDoesNotKnow() {
    refused("worry: medium", "worry: orange", "orange");
  }

  @Test
  void shouldRefuseTimesThatCannotRun() {
    refused("attend: PT30M", "attend: PT0S", "attend");
  }

  /** For whom nothing answers, nobody is called: the application must not start so. */
  @Test
  void shouldAnswerEveryScoreThatLeadsForSomePatient() {
    var leaders = ScoreBooks.shipped(Catalogue.shipped()).leaders();
    assertThat(leaders).contains("news2", "pews-brighton", "maternal-trigger");

    SHIPPED.policy().triggers().answers(leaders);

    for (var leader : leaders) {
      var without = SHIPPED.text().replace("- score: " + leader + "\n", "- score: other\n");
      assertThatThrownBy(() -> PolicyFile.parse("p", without).policy().triggers().answers(leaders))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining(leader);
    }
  }

  @Test
  void shouldRefuseAThresholdThatNamesNoSource() {
    refused(", source: \"KDIGO 2012, stage 2; the level is local policy\"", "", "source");
  }

  private static void refused(String setting, String broken, String named) {
    assertThat(SHIPPED.text()).contains(setting);
    assertThatThrownBy(
            () -> PolicyFile.parse("policy.yaml", SHIPPED.text().replace(setting, broken)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("policy.yaml")
        .hasMessageContaining(named);
  }
}
