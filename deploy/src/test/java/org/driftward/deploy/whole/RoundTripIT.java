package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import java.util.stream.Collectors;
import org.driftward.deploy.whole.Specimens.Taken;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What comes in by any way and is read over FHIR has the same value, unit, time and site: random
 * values, from a fixed seed, for every finding of the catalogue at every site and side.
 */
@WithRunningApp
class RoundTripIT {

  private final RunningApp app;
  private final FhirFeed feed;
  private final Ward ward;

  RoundTripIT(RunningApp app) {
    this.app = app;
    this.feed = new FhirFeed(app);
    this.ward = Ward.open(app, "sorrel");
  }

  @ParameterizedTest
  @EnumSource(Way.class)
  void shouldPublishWhatCameIn(Way way) {
    var encounter = "V-51-" + way.name();
    ward.admit(encounter, "1", "Harrowgate, Sunniva");
    var all = Specimens.of(new Random(20310302), Instant.now().minusSeconds(3600), way.finest());
    way.send(app, encounter, all);

    var expected = all.stream().map(Taken::fact).collect(Collectors.toSet());
    assertThat(expected).hasSizeGreaterThan(240);
    await()
        .atMost(Duration.ofMinutes(2))
        .pollInterval(Duration.ofSeconds(2))
        .untilAsserted(
            () ->
                assertThat(feed.observations(encounter))
                    .flatExtracting(Fact::of)
                    .containsExactlyInAnyOrderElementsOf(expected));
  }
}
