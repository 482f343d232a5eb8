package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EmbeddedPartsTest {

  private final List<String> stopped = Collections.synchronizedList(new ArrayList<>());

  @Test
  void shouldStopInTheReverseOfTheirOrder() {
    var parts = EmbeddedParts.start(List.of(() -> part("database"), () -> part("broker")));

    parts.close();

    assertThat(stopped).containsExactly("broker", "database");
  }

  @Test
  void shouldGatherTheProperties() {
    var parts = EmbeddedParts.start(List.of(() -> part("database"), () -> part("broker")));

    assertThat(parts.properties()).isEqualTo(Map.of("database.port", "1", "broker.port", "1"));
  }

  @Test
  void shouldLeaveNothingRunningWhenOneDoesNotStart() {
    assertThatExceptionOfType(StartException.class)
        .isThrownBy(
            () ->
                EmbeddedParts.start(
                    List.of(
                        () -> {
                          throw new StartException("no database today");
                        },
                        () -> part("broker"))))
        .withMessage("no database today");

    assertThat(stopped).containsExactly("broker");
  }

  private EmbeddedPart part(String name) {
    return new EmbeddedPart() {
      @Override
      public Map<String, String> properties() {
        return Map.of(name + ".port", "1");
      }

      @Override
      public void close() {
        stopped.add(name);
      }
    };
  }
}
