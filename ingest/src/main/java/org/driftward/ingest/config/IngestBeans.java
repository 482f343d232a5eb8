package org.driftward.ingest.config;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.Optional;
import org.driftward.ingest.contract.AssessmentCheck;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.EncounterReader;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;

/** Turns the settings into the pure core, which knows no configuration. */
@Singleton
public class IngestBeans {

  @Produces
  @Singleton
  Catalogue catalogue() {
    return Catalogue.shipped();
  }

  @Produces
  @Singleton
  IntakeLimits limits(IngestConfig config) {
    return new IntakeLimits(config.clockSkew(), config.beforeAdmission(), config.maxAssessments());
  }

  @Produces
  @Singleton
  IntakeRules rules(Catalogue catalogue, IntakeLimits limits) {
    return new IntakeRules(catalogue, limits);
  }

  /** The very rules of intake, asked beforehand. */
  @Produces
  @Singleton
  AssessmentCheck check(IntakeRules rules) {
    return (assessment, encounter, now) ->
        rules.check(
            Reading.of(assessment),
            id -> Optional.of(encounter).filter(known -> known.id().equals(id)),
            now);
  }

  @Produces
  @Singleton
  AssessmentReader assessmentReader(IntakeLimits limits) {
    return new AssessmentReader(limits);
  }

  @Produces
  @Singleton
  EncounterReader encounterReader(IntakeLimits limits) {
    return new EncounterReader(limits);
  }
}
