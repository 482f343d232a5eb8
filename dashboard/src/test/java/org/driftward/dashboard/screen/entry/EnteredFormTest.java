package org.driftward.dashboard.screen.entry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Text;
import org.driftward.ingest.contract.Side;
import org.junit.jupiter.api.Test;

class EnteredFormTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();
  private static final OneTouch TOUCH = OneTouch.of(CATALOGUE);

  @Test
  void shouldReadEveryKindOfFinding() {
    var form =
        EnteredForm.read(
            CATALOGUE,
            Map.of(
                "temperature", "36,8",
                "pulse-amplitude/radial/left", "1",
                "consciousness", "voice",
                "note", " ate well ",
                "csrf-token", "x",
                "heart-rate", ""),
            List.of(),
            TOUCH);

    assertThat(form.problems()).isEmpty();
    assertThat(form.findings())
        .containsExactlyInAnyOrder(
            Finding.quantity("temperature", "36.8", "Cel"),
            new Finding(new FindingKey("pulse-amplitude", "radial", Side.LEFT), new Grade(1)),
            Finding.coded("consciousness", "voice"),
            new Finding(FindingKey.of("note"), new Text("ate well")));
  }

  @Test
  void shouldNameWhatItCannotRead() {
    var form = EnteredForm.read(CATALOGUE, Map.of("heart-rate", "7o"), List.of(), TOUCH);

    assertThat(form.findings()).isEmpty();
    assertThat(form.problems()).containsExactly("Heart rate: \"7o\" is not a number");
  }

  @Test
  void shouldLetWhatWasEnteredStandBeforeWhatIsExpected() {
    var form =
        EnteredForm.read(
            CATALOGUE, Map.of("chest-expansion//left", "absent"), List.of("chest"), TOUCH);

    assertThat(form.findings())
        .filteredOn(finding -> finding.code().equals("chest-expansion"))
        .hasSize(2)
        .extracting(Finding::value)
        .containsExactly(new Coded("absent"), new Coded("full"));
  }
}
