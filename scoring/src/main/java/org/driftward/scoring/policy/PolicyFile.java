package org.driftward.scoring.policy;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.driftward.scoring.core.policy.DriftRule;
import org.driftward.scoring.core.policy.LevelRule;
import org.driftward.scoring.core.policy.ObservationRule;
import org.driftward.scoring.core.policy.QuietRule;
import org.driftward.scoring.core.policy.RateFinding;
import org.driftward.scoring.core.policy.Restart;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.policy.TrendRule;
import org.driftward.scoring.core.policy.UrgentValue;
import org.driftward.scoring.core.policy.Validity;
import org.jspecify.annotations.Nullable;

/**
 * A policy file: a {@code version} and one section for each part of the application that takes
 * settings from it. Only {@code scoring} is read here. A section is whole or absent: nobody should
 * have to guess which half of a hospital's settings is ours.
 */
public final class PolicyFile {

  private static final String SHIPPED = "/policy/scoring.yaml";

  private static final ObjectMapper YAML =
      JsonMapper.builder(new YAMLFactory())
          .findAndAddModules()
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build();

  private PolicyFile() {}

  /** The policy that ships with the application. */
  public static ScoringPolicy shipped() {
    Sections file;
    try (var in = Objects.requireNonNull(PolicyFile.class.getResourceAsStream(SHIPPED), SHIPPED)) {
      file = parse(SHIPPED, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Objects.requireNonNull(file.scoring(), SHIPPED).under(file.version());
  }

  /**
   * The scoring policy of a hospital's file: its {@code scoring} section, or where it has none the
   * shipped one, under the file's version.
   *
   * @throws IllegalStateException naming file, line and fault if the file is broken
   * @throws UncheckedIOException if it cannot be read
   */
  public static ScoringPolicy read(Path path) {
    try {
      return read(path.toString(), Files.readString(path), shipped());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The scoring policy of a file's text: its {@code scoring} section, or {@code otherwise} under
   * the file's version.
   *
   * @param name of the file, for faults
   * @throws IllegalStateException naming file, line and fault if the text is broken
   */
  public static ScoringPolicy read(String name, String text, ScoringPolicy otherwise) {
    var file = parse(name, text);
    var section = file.scoring();
    return section == null ? otherwise.withVersion(file.version()) : section.under(file.version());
  }

  private static Sections parse(String name, String text) {
    try {
      return YAML.readValue(text, Sections.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(name + ": " + e.getMessage(), e);
    }
  }

  /** Sections of other parts of the application stand beside ours. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Sections(String version, @Nullable Scoring scoring) {
    Sections {
      if (version == null || version.isBlank()) {
        throw new IllegalArgumentException("a policy needs a version");
      }
    }
  }

  /** The section as it stands in the file. */
  record Scoring(
      Validity validity,
      Duration spacing,
      QuietRule quiet,
      DriftRule drift,
      TrendRule trend,
      LevelRule level,
      Set<Restart> restarts,
      ObservationRule observations,
      @Nullable List<UrgentValue> urgent,
      List<RateFinding> rates) {

    /** Refuses a section with a gap where it stands, while its line is known. */
    Scoring {
      new ScoringPolicy(
          "unnamed",
          validity,
          spacing,
          quiet,
          drift,
          trend,
          level,
          restarts,
          observations,
          urgent,
          rates);
    }

    /** A section of before there were urgent values has no empty floor, but the shipped one. */
    ScoringPolicy under(String version) {
      return new ScoringPolicy(
          version,
          validity,
          spacing,
          quiet,
          drift,
          trend,
          level,
          restarts,
          observations,
          urgent == null ? shipped().urgent() : urgent,
          rates);
    }
  }
}
