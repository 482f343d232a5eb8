package org.driftward.ingest.core.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.UnitConversion;
import org.driftward.ingest.core.files.Sheet.HeaderException;
import org.driftward.ingest.unit.UcumConversion;
import org.junit.jupiter.api.Test;

class SheetTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();
  private static final UnitConversion UNITS = new UcumConversion()::convert;
  private static final List<String> NEEDED = List.of("encounter", "patient", "takenAt");

  @Test
  void shouldUnderstandEveryColumnOfItsOwnHeader() throws HeaderException {
    var header = Column.header(CATALOGUE);

    assertThat(header)
        .doesNotHaveDuplicates()
        .contains("heart-rate [/min]", "pulse-amplitude@dorsalis-pedis/left", "consciousness");
    assertThat(Sheet.of(header, FileMapping.OWN, CATALOGUE, UNITS)).isNotNull();
  }

  @Test
  void shouldNeverGuessAUnit() {
    assertThat(refused("temperature"))
        .singleElement()
        .satisfies(fault -> assertThat(fault.detail()).contains("temperature [Cel]"));
    assertThat(refused("temperature [mm[Hg]]")).extracting(Fault::rule).containsOnly("wrong-unit");
  }

  @Test
  void shouldConvertAUnitThatTheHeaderSays() throws HeaderException {
    // 100.4 degrees Fahrenheit are 38 degrees Celsius exactly.
    var sheet = sheet(FileMapping.OWN, "temperature [[degF]]");

    var finding = finding(sheet.row(List.of("V-1", "P-1", "2026-01-05T10:00:00Z", "100.4")));

    assertThat((BigDecimal) finding.get("value")).isEqualByComparingTo("38");
    assertThat(finding.get("unit")).isEqualTo("Cel");
  }

  @Test
  void shouldRefuseWhatItDoesNotKnowAndWhatStandsThereTwice() {
    assertThat(refused("heart-rate [/min]", "heart-rate [/h]", "humour", "consciousness/middle"))
        .extracting(Fault::pointer)
        .containsExactly("/heart-rate [~1h]", "/humour", "/consciousness~1middle");
  }

  @Test
  void shouldRefuseAHeaderWithoutAnEncounter() {
    var failure =
        catchThrowableOfType(
            HeaderException.class,
            () -> Sheet.of(List.of("patient", "takenAt"), FileMapping.OWN, CATALOGUE, UNITS));

    assertThat(failure.faults())
        .singleElement()
        .extracting(Fault::rule)
        .isEqualTo("unknown-column");
  }

  @Test
  void shouldRefuseARowOfAnotherWidth() throws HeaderException {
    var sheet = sheet(FileMapping.OWN);

    assertThatIllegalArgumentException().isThrownBy(() -> sheet.row(List.of("V-1", "P-1")));
  }

  @Test
  void shouldKnowTheSameRowAgainWhateverTheOrderOfItsColumns() throws HeaderException {
    var one =
        Sheet.of(
            List.of("encounter", "patient", "takenAt", "by"), FileMapping.OWN, CATALOGUE, UNITS);
    var other =
        Sheet.of(
            List.of("by", "takenAt", "encounter", "patient"), FileMapping.OWN, CATALOGUE, UNITS);

    var first = one.row(List.of("V-1", "P-1", "2026-01-05T10:00:00Z", "n")).request().get("id");

    assertThat(other.row(List.of("n", "2026-01-05T10:00:00Z", "V-1", "P-1")).request())
        .containsEntry("id", first);
    assertThat(one.row(List.of("V-1", "P-1", "2026-01-05T10:00:00Z", "m")).request().get("id"))
        .isNotEqualTo(first);
  }

  @Test
  void shouldReadAForeignHeader() throws HeaderException {
    var mapping =
        new FileMapping(
            ';',
            Map.of(
                "Case",
                "encounter",
                "Person",
                "patient",
                "At",
                "takenAt",
                "T",
                "temperature [Cel]",
                "AVPU",
                "consciousness"),
            List.of("Room"),
            Map.of("consciousness", Map.of("A", "alert")),
            ZoneId.of("Europe/Berlin"),
            "dd.MM.uuuu HH:mm",
            true);
    var sheet =
        Sheet.of(List.of("Case", "Room", "Person", "At", "T", "AVPU"), mapping, CATALOGUE, UNITS);

    var request = sheet.row(List.of("V-1", "7", "P-1", "05.01.2026 03:10", "36,8", "A")).request();

    assertThat(request).containsEntry("takenAt", "2026-01-05T02:10:00Z");
    assertThat((List<?>) request.get("findings"))
        .extracting(Object::toString)
        .containsExactly(
            "{code=temperature, value=36.8, unit=Cel}", "{code=consciousness, coded=alert}");
  }

  @Test
  void shouldNotGuessWhichOfTwoHoursIsMeant() throws HeaderException {
    // The European Union's summer time ended on 25 October 2026 at 03:00 (Directive 2000/84/EC).
    var mapping =
        new FileMapping(
            ',', Map.of(), List.of(), Map.of(), ZoneId.of("Europe/Berlin"), null, false);
    var sheet = sheet(mapping);

    assertThat(sheet.row(List.of("V-1", "P-1", "2026-10-25T02:30")).request())
        .containsEntry("takenAt", "2026-10-25T02:30");
    assertThat(sheet.row(List.of("V-1", "P-1", "2026-10-25T03:30")).request())
        .containsEntry("takenAt", "2026-10-25T02:30:00Z");
  }

  @Test
  void shouldPointAtTheColumn() throws HeaderException {
    var sheet = sheet(FileMapping.OWN, "heart-rate [/min]");
    var row = sheet.row(List.of("V-1", "P-1", "2026-01-05T10:00:00Z", "many"));

    var fault = Sheet.atItsColumn(new Fault("/findings/0/value", "wrong-type", "no"), row);

    // RFC 6901, section 3: a slash in a name is written ~1.
    assertThat(fault.pointer()).isEqualTo("/heart-rate [~1min]");
  }

  private static Sheet sheet(FileMapping mapping, String... more) throws HeaderException {
    return Sheet.of(header(more), mapping, CATALOGUE, UNITS);
  }

  private static List<Fault> refused(String... more) {
    return catchThrowableOfType(HeaderException.class, () -> sheet(FileMapping.OWN, more)).faults();
  }

  private static List<String> header(String... more) {
    var header = new ArrayList<String>(NEEDED);
    header.addAll(List.of(more));
    return header;
  }

  private static Map<?, ?> finding(Sheet.Row row) {
    return (Map<?, ?>) ((List<?>) row.request().get("findings")).get(0);
  }
}
