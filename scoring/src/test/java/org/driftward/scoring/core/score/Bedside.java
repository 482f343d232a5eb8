package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.core.Picture;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.definition.ScoreBooks;

/** Builds what is known of one patient and scores it with the shipped definitions. Immutable. */
final class Bedside {

  static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  static final Catalogue CATALOGUE = Catalogue.shipped();
  static final ScoreBook BOOK = ScoreBooks.shipped(CATALOGUE);
  static final Duration SERVES = Duration.ofHours(12);

  private final List<Reading> readings;
  private final Subject subject;
  private final Instant at;

  private Bedside(List<Reading> readings, Subject subject, Instant at) {
    this.readings = List.copyOf(readings);
    this.subject = subject;
    this.at = at;
  }

  /** An adult of whom nothing is known yet. */
  static Bedside adult() {
    return new Bedside(List.of(), Subject.ofAge(70), NOW);
  }

  Bedside as(Subject other) {
    return new Bedside(readings, other, at);
  }

  Bedside onScale(int scale) {
    return as(new Subject(subject.ageYears(), scale, subject.populations()));
  }

  /** The next one was recorded this long ago. */
  Bedside ago(String duration) {
    return new Bedside(readings, subject, NOW.minus(Duration.parse(duration)));
  }

  /** Adds a number in the catalogue's unit, a grade or a word, whichever the finding is. */
  Bedside with(String code, Object value) {
    return at(FindingKey.of(code), value);
  }

  Bedside at(String code, String site, Side side, Object value) {
    return at(new FindingKey(code, site, side), value);
  }

  Bedside in(String code, String value, String unit) {
    return add(FindingKey.of(code), new FindingValue.Quantity(new BigDecimal(value), unit));
  }

  Bedside without(String code) {
    var rest = readings.stream().filter(reading -> !reading.code().equals(code)).toList();
    return new Bedside(rest, subject, at);
  }

  private Bedside at(FindingKey key, Object value) {
    var entry = CATALOGUE.find(key.code()).orElseThrow();
    return add(key, value(entry, value.toString()));
  }

  private static FindingValue value(CatalogueEntry entry, String value) {
    return switch (entry.kind()) {
      case QUANTITY -> new FindingValue.Quantity(new BigDecimal(value), entry.unit());
      case GRADE -> new FindingValue.Grade(Integer.parseInt(value));
      case CODED -> new FindingValue.Coded(value);
      case TEXT -> new FindingValue.Text(value);
    };
  }

  private Bedside add(FindingKey key, FindingValue value) {
    var more = new ArrayList<>(readings);
    more.add(new Reading(key, value, at, "A-" + at));
    return new Bedside(more, subject, NOW);
  }

  Picture picture() {
    var newest = new TreeMap<FindingKey, Reading>();
    for (var reading : readings) {
      newest.merge(reading.key(), reading, (a, b) -> a.takenAt().isAfter(b.takenAt()) ? a : b);
    }
    return new Picture(NOW, newest);
  }

  History history() {
    return (code, from) ->
        readings.stream()
            .filter(reading -> reading.code().equals(code) && !reading.takenAt().isBefore(from))
            .sorted((a, b) -> a.takenAt().compareTo(b.takenAt()))
            .toList();
  }

  Subject subject() {
    return subject;
  }

  List<Score> scores() {
    return BOOK.score(picture(), subject, code -> SERVES, history());
  }

  Score score(String id) {
    return scores().stream().filter(score -> score.id().equals(id)).findFirst().orElseThrow();
  }

  boolean gives(String id) {
    return scores().stream().anyMatch(score -> score.id().equals(id));
  }

  /** The total of a complete score. */
  int total(String id) {
    var score = score(id);
    if (!score.complete()) {
      throw new AssertionError(id + " lacks " + score.missing());
    }
    return score.low().intValueExact();
  }

  /** The points that the row of one input earned. */
  int points(String id, String input) {
    return scored(id, input).points();
  }

  ScoredInput scored(String id, String input) {
    return score(id).inputs().stream()
        .filter(scored -> scored.code().equals(input))
        .findFirst()
        .orElseThrow();
  }
}
