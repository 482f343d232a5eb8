package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** Everything that one phrase can mean; what it does mean is decided by what stands around it. */
final class Meaning {

  /**
   * A value of a finding.
   *
   * @param alone whether the words say it without the finding's name
   * @param general whether it comes from the words of all findings ("normal"), not from its own
   */
  record Option(String code, FindingValue value, boolean alone, boolean general) {}

  /** Findings it names. */
  final Set<String> named = new LinkedHashSet<>();

  /** Findings that may be spoken of where it is said. */
  final Set<String> about = new LinkedHashSet<>();

  /** Findings that a question or an instruction with these words tests. */
  final Set<String> asked = new LinkedHashSet<>();

  /** Findings of the part of the examination that it heads. */
  final Set<String> section = new LinkedHashSet<>();

  final List<Option> options = new ArrayList<>();

  /** Findings that its numbers say, in turn. */
  final List<String> numbers = new ArrayList<>();

  final Set<String> sites = new LinkedHashSet<>();
  final Set<Side> sides = EnumSet.noneOf(Side.class);

  /** Codes of a family that it picks: "on movement". */
  final Set<String> aspects = new HashSet<>();

  final Set<Cue> cues = EnumSet.noneOf(Cue.class);

  @Nullable String unit;

  /** The first of its numbers from which on it is read so. */
  int atLeast;

  /** Whether a finding is named, asked for or may be spoken of. */
  boolean topic() {
    return !named.isEmpty() || !about.isEmpty() || !asked.isEmpty();
  }

  boolean place() {
    return !sites.isEmpty() || !sides.isEmpty() || !aspects.isEmpty();
  }

  boolean has(Cue cue) {
    return cues.contains(cue);
  }

  Set<String> topics() {
    var all = new LinkedHashSet<>(named);
    all.addAll(asked);
    all.addAll(about);
    return all;
  }

  static Meaning of(Cue cue) {
    var meaning = new Meaning();
    meaning.cues.add(cue);
    return meaning;
  }

  static Meaning both(Meaning one, Meaning other) {
    var both = new Meaning();
    both.add(one);
    both.add(other);
    return both;
  }

  private void add(Meaning other) {
    named.addAll(other.named);
    about.addAll(other.about);
    asked.addAll(other.asked);
    section.addAll(other.section);
    options.addAll(other.options);
    numbers.addAll(other.numbers);
    sites.addAll(other.sites);
    sides.addAll(other.sides);
    aspects.addAll(other.aspects);
    cues.addAll(other.cues);
    atLeast = other.atLeast == 0 ? atLeast : other.atLeast;
    unit = other.unit == null ? unit : other.unit;
  }
}
