package org.driftward.deploy.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.driftward.scoring.config.ScoringConfig;

/** Scoring as it runs by default. */
record BenchConfig(Path folder) implements ScoringConfig, ScoringConfig.Streams {

  static final String APPLICATION = "bench-scoring";

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
    return folder.resolve("reports");
  }

  @Override
  public Streams streams() {
    return this;
  }

  @Override
  public String applicationId() {
    return APPLICATION;
  }

  @Override
  public Path stateDir() {
    return folder.resolve("scoring");
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
    return 2000;
  }

  @Override
  public int packedEncounters() {
    return 20_000;
  }

  @Override
  public int storeMemory() {
    return 64;
  }

  @Override
  public Duration restartAfter() {
    return Duration.ofMillis(200);
  }
}
