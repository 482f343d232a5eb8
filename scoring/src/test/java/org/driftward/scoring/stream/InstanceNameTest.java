package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InstanceNameTest {

  @Test
  void shouldBeTheSameAfterARestartAndAnotherElsewhere(
      @TempDir Path here, @TempDir Path elsewhere) {
    var name = InstanceName.in(here.resolve("scoring"));

    assertThat(InstanceName.in(here.resolve("scoring"))).isEqualTo(name);
    assertThat(InstanceName.in(elsewhere)).isNotEqualTo(name);
  }
}
