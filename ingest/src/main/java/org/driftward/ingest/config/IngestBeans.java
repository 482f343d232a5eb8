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
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.core.mapping.ForeignCode;
import org.driftward.ingest.core.mapping.Meaning;
import org.driftward.ingest.mapping.CodeMapFile;

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

  /** The catalogue's own codes, then the site's file, then whatever else knows codes. */
  @Produces
  @Singleton
  CodeMap codeMap(Catalogue catalogue, IngestConfig config, @Any Instance<CodeMapSource> further) {
    var maps = new ArrayList<CodeMap>();
    maps.add(CodeTable.of(catalogue));
    maps.add(CodeMapFile.read(catalogue, config.codeMap()));
    further.forEach(source -> maps.add(new Current(source)));
    return CodeMap.firstOf(maps);
  }

  /** Asks the source anew each time, because people edit it. */
  private record Current(CodeMapSource source) implements CodeMap {
    @Override
    public Optional<Meaning> find(ForeignCode code) {
      return source.codes().find(code);
    }

    @Override
    public Optional<String> unit(String word) {
      return source.codes().unit(word);
    }
  }
}
