package org.driftward.ingest.config;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.EncounterReader;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;

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
