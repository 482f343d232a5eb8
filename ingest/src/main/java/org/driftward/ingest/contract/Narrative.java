package org.driftward.ingest.contract;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was understood of an examination that was said or typed. Nothing in it is recorded: a person
 * confirms every finding. Spans are offsets into the text in UTF-16 code units, {@code to}
 * exclusive.
 *
 * @param findings at most one for each key, in the order of the text
 * @param questions where two readings are possible, or where what was said cannot be
 * @param unread clinical words from which no finding was made
 */
public record Narrative(List<Heard> findings, List<Question> questions, List<Span> unread) {

  /** The longest text that is read, in UTF-16 code units; about twenty minutes of speech. */
  public static final int LONGEST = 20_000;

  /** How directly the words say it. */
  public enum Certainty implements Word {
    /** Finding, place and value stand in the words. */
    SAID,
    /** A part of it comes from the words before: the finding, the place, the side or the scale. */
    IMPLIED
  }

  /** Why a person is asked. */
  public enum Why implements Word {
    /** The value lies outside what the catalogue accepts; an offer is in another unit. */
    OUT_OF_RANGE,
    /** A diastolic pressure that is not below the systolic one. */
    IMPOSSIBLE_PAIR,
    /** A limit, a range or a hedge in place of a value. */
    NO_EXACT_VALUE
  }

  /** Code units {@code from} to {@code to} exclusive. */
  public record Span(int from, int to) {
    public Span {
      if (from < 0 || to <= from) {
        throw new IllegalArgumentException("a span from " + from + " to " + to);
      }
    }
  }

  /** A finding and the words that say its value. */
  public record Heard(Finding finding, Span span, Certainty certainty) {}

  /**
   * @param code what it is about; null where that is unclear, too
   * @param offers findings that may have been meant; may be empty
   */
  public record Question(Span span, Why why, @Nullable String code, List<Finding> offers) {
    public Question {
      offers = List.copyOf(offers);
    }
  }

  public Narrative {
    findings = List.copyOf(findings);
    questions = List.copyOf(questions);
    unread = List.copyOf(unread);
  }
}
