package org.driftward.ingest.config;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.Optional;
import org.driftward.ingest.contract.AssessmentCheck;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.EncounterReader;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeMapSource;
import org.driftward.ingest.core.mapping.CodeRules;
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.mapping.CodeMapFile;
import org.driftward.ingest.unit.UcumConversion;

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

  @Produces
  @Singleton
  CodeRules codeRules(Catalogue catalogue) {
    return new CodeRules(catalogue, new UcumConversion()::convert);
  }

  /** What people say on the page, then the site's file, then ours, then the catalogue itself. */
  @Produces
  @Singleton
  CodeMap codeMap(CodeRules rules, IngestConfig config, @Any Instance<CodeMapSource> further) {
    var maps = new ArrayList<CodeMap>();
    further.forEach(source -> maps.add(source.live()));
    config.codeMap().ifPresent(file -> maps.add(CodeMapFile.read(rules, file)));
    maps.add(CodeMapFile.shipped(rules));
    maps.add(CodeTable.of(rules.catalogue()));
    return CodeMap.firstOf(maps);
  }
}
