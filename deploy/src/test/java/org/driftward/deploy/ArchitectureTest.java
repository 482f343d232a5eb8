package org.driftward.deploy;

import static com.tngtech.archunit.base.DescribedPredicate.alwaysTrue;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The fences of the house: what may know what. */
class ArchitectureTest {

  private static JavaClasses house;

  @BeforeAll
  static void read() {
    house =
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.driftward");
  }

  @Test
  void shouldSeeEveryModule() {
    assertThat(List.of("ground", "ingest", "scoring", "alerts", "dashboard", "deploy"))
        .allSatisfy(
            module ->
                assertThat(house.that(resideInAPackage("org.driftward." + module + "..")))
                    .isNotEmpty());
  }

  @Test
  void shouldDependOneWayOnly() {
    layeredArchitecture()
        .consideringOnlyDependenciesInLayers()
        .layer("ingest")
        .definedBy("org.driftward.ingest..")
        .layer("scoring")
        .definedBy("org.driftward.scoring..")
        .layer("alerts")
        .definedBy("org.driftward.alerts..")
        .layer("dashboard")
        .definedBy("org.driftward.dashboard..")
        .layer("deploy")
        .definedBy("org.driftward.deploy..")
        .whereLayer("deploy")
        .mayNotBeAccessedByAnyLayer()
        .whereLayer("dashboard")
        .mayOnlyBeAccessedByLayers("deploy")
        .whereLayer("alerts")
        .mayOnlyBeAccessedByLayers("dashboard", "deploy")
        .whereLayer("scoring")
        .mayOnlyBeAccessedByLayers("alerts", "dashboard", "deploy")
        .check(house);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ingest", "scoring", "alerts", "dashboard"})
  void shouldKnowOnlyTheContractOfAnotherModule(String module) {
    var inside = "org.driftward." + module + "..";
    noClasses()
        .that(resideOutsideOfPackage(inside))
        .should()
        .dependOnClassesThat(
            resideInAPackage(inside)
                .and(resideOutsideOfPackage("org.driftward." + module + ".contract..")))
        .check(house);
  }

  @Test
  void shouldKeepTheGroundFreeOfTheModulesThatStandOnIt() {
    noClasses()
        .that()
        .resideInAPackage("org.driftward.ground..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("org.driftward..")
                .and(resideOutsideOfPackage("org.driftward.ground..")))
        .check(house);
  }

  /** Words, not syllables: forward is none of them, and neither is the name of the project. */
  @Test
  void shouldKeepTheGroundFreeOfWhatTheProjectIsFor() throws IOException {
    var domain =
        Pattern.compile(
            "(?i)\\b(patient|ward|bed|bedside|nurse|encounter|assessment|finding|episode|score|"
                + "scoring|snapshot|alarm|alert|ladder|rung|journal|clinical|hospital)s?\\b");
    var ground = Path.of("..", "ingest", "src", "main", "java", "org", "driftward", "ground");
    try (var files = Files.walk(ground)) {
      var texts = files.filter(Files::isRegularFile).toList();
      assertThat(texts).isNotEmpty();
      for (var file : texts) {
        assertThat(domain.matcher(Files.readString(file)).results().map(MatchResult::group))
            .as(file.getFileName().toString())
            .isEmpty();
      }
    }
  }

  @Test
  void shouldKeepContractsPlain() {
    noClasses()
        .that()
        .resideInAPackage("org.driftward.*.contract..")
        .should()
        .dependOnClassesThat(resideInAnyPackage(FRAMEWORKS))
        .check(house);
  }

  @Test
  void shouldKeepCoresPure() {
    noClasses()
        .that()
        .resideInAPackage("org.driftward.*.core..")
        .should()
        .dependOnClassesThat(resideInAnyPackage(FRAMEWORKS).or(resideInAPackage("java.nio.file..")))
        .check(house);
  }

  @Test
  void shouldPassTimeAndChanceIntoCores() {
    noClasses()
        .that()
        .resideInAPackage("org.driftward.*.core..")
        .should()
        .callMethod(Instant.class, "now")
        .orShould()
        .callMethod(LocalDate.class, "now")
        .orShould()
        .callMethod(LocalDateTime.class, "now")
        .orShould()
        .callMethod(ZonedDateTime.class, "now")
        .orShould()
        .callMethod(Clock.class, "systemUTC")
        .orShould()
        .callMethod(Clock.class, "systemDefaultZone")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(UUID.class, "randomUUID")
        .orShould()
        .callConstructor(Random.class)
        .orShould()
        .callMethod(Math.class, "random")
        .check(house);
  }

  /**
   * Everybody else asks the injected clock; only this module decides which one that is. Sign-in is
   * the exception: guessing is slowed in the guesser's time, even where the ward's runs faster.
   */
  @Test
  void shouldReadTheMachinesClockNowhereButInDeploy() {
    noClasses()
        .that()
        .resideOutsideOfPackages("org.driftward.deploy..", "org.driftward.dashboard.account..")
        .should()
        .callMethod(Instant.class, "now")
        .orShould()
        .callMethod(LocalDate.class, "now")
        .orShould()
        .callMethod(Clock.class, "systemUTC")
        .orShould()
        .callMethod(Clock.class, "systemDefaultZone")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .check(house);
  }

  @Test
  void shouldStartWithoutQuarkus() {
    classes()
        .that()
        .resideInAPackage("org.driftward.deploy.embedded..")
        .should()
        .onlyDependOnClassesThat(resideOutsideOfPackage("io.quarkus.."))
        .check(house);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ground", "ingest", "scoring", "alerts", "dashboard", "deploy"})
  void shouldHaveNoCyclesBetweenItsPackages(String module) {
    slices()
        .matching("org.driftward." + module + ".(*)..")
        .should()
        .beFreeOfCycles()
        // Decision 2: a contract may name the one implementation that it hands out.
        .ignoreDependency(resideInAPackage("..contract.."), alwaysTrue())
        .check(house);
  }

  private static final String[] FRAMEWORKS = {
    "io.quarkus..",
    "jakarta..",
    "org.eclipse.microprofile..",
    "io.micrometer..",
    "org.apache.kafka..",
    "com.fasterxml..",
    "java.sql..",
    "javax.sql..",
    "org.jdbi..",
    "org.jboss..",
    "ca.uhn.."
  };
}
