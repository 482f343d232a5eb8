package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PersonNameTest {

  @Test
  void shouldSetTheSurnameApart() {
    assertThat(PersonName.of("Marlow, Edith Rose"))
        .isEqualTo(new PersonName("Marlow", "Edith Rose"));
  }

  @Test
  void shouldTakeANameWithoutACommaWhole() {
    assertThat(PersonName.of(" Marlow ")).isEqualTo(new PersonName("Marlow", ""));
  }

  @Test
  void shouldSayThatANameIsUnknown() {
    assertThat(PersonName.of(null).surname()).isEqualTo("Name unknown");
    assertThat(PersonName.of(" ").surname()).isEqualTo("Name unknown");
  }

  @Test
  void shouldNotTellTheNameWhenLogged() {
    assertThat(PersonName.of("Marlow, Edith").toString()).doesNotContain("Marlow");
  }
}
