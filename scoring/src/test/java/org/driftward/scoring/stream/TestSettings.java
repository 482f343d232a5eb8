package org.driftward.scoring.stream;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.driftward.scoring.config.ScoringConfig;

/** The settings of scoring for a small machine in a hurry. */
public record TestSettings(Path stateDir) implements ScoringConfig, ScoringConfig.Streams {

  @Override
  public Optional<Path> policy() {
    return Optional.empty();
  }

  @Override
  public Optional<List<Path>> scores() {
    return Optional.empty();
  }

  @Override
  public Path reports() {
    return stateDir.resolveSibling("reports");
  }

  @Override
  public Streams streams() {
    return this;
  }

  @Override
  public String applicationId() {
    return "scoring-test";
  }

  @Override
  public int threads() {
    return 2;
  }

  @Override
  public Duration commitInterval() {
    return Duration.ofMillis(100);
  }

  @Override
  public int standbyReplicas() {
    return 0;
  }

  @Override
  public short replication() {
    return -1;
  }

  @Override
  public int rememberedEncounters() {
    return 10;
  }

  @Override
  public int packedEncounters() {
    return 10;
  }

  @Override
  public int storeMemory() {
    return 16;
  }

  @Override
  public Duration restartAfter() {
    return Duration.ofMillis(200);
  }
}
