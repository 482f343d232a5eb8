package org.driftward.dashboard.web.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** What somebody says that a code means. Lists of two names belong together item by item. */
public class MeantForm {

  @RestForm public @Nullable String finding;

  @RestForm public @Nullable String site;

  @RestForm public @Nullable String side;

  @RestForm public @Nullable String unit;

  /** {@code every} or {@code this}. */
  @RestForm public @Nullable String feed;

  /** The sender's words for units. */
  @RestForm public @Nullable List<String> word;

  /** What each of them means. */
  @RestForm public @Nullable List<String> ucum;

  /** Options of the catalogue. */
  @RestForm public @Nullable List<String> option;

  /** The sender's answers for each of them, a line for each. */
  @RestForm public @Nullable List<String> answers;

  /** Whether the held messages shall come in now. */
  @RestForm public @Nullable String replay;

  /**
   * @throws IllegalArgumentException if it is no form of ours, or says one answer twice; the
   *     message is for the person
   */
  Meant meant() {
    return new Meant(
        "every".equals(feed),
        Objects.requireNonNullElse(finding, ""),
        RefusalQuery.words(site),
        side == null || side.isBlank() ? null : Word.parse(Side.class, side),
        FormField.words(unit),
        values(),
        units());
  }

  private Map<String, String> values() {
    var values = new LinkedHashMap<String, String>();
    for (int i = 0; i < sizeOf(option, answers); i++) {
      var means = Objects.requireNonNull(option).get(i);
      Objects.requireNonNull(answers)
          .get(i)
          .lines()
          .map(String::strip)
          .filter(answer -> !answer.isEmpty())
          .forEach(answer -> put(values, answer, means));
    }
    return values;
  }

  private Map<String, String> units() {
    var units = new LinkedHashMap<String, String>();
    for (int i = 0; i < sizeOf(word, ucum); i++) {
      var means = FormField.words(Objects.requireNonNull(ucum).get(i));
      if (means != null) {
        put(units, Objects.requireNonNull(word).get(i), means);
      }
    }
    return units;
  }

  private static void put(Map<String, String> into, String said, String means) {
    var before = into.putIfAbsent(said, means);
    if (before != null && !before.equals(means)) {
      throw new IllegalArgumentException(
          "\"" + said + "\" cannot mean both " + before + " and " + means);
    }
  }

  private static int sizeOf(@Nullable List<String> one, @Nullable List<String> other) {
    return one == null || other == null ? 0 : Math.min(one.size(), other.size());
  }
}
