package org.driftward.ingest.contract;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A code that came in and means nothing to us yet, with what the sender said beside it. Names a
 * kind of observation, never a value.
 *
 * @param text what the sender calls it, or null
 * @param unit the unit that the sender gave with it, or null
 */
public record UnmappedCode(ForeignCode code, @Nullable String text, @Nullable String unit) {

  private static final int LONGEST_CODE = 255;
  private static final int LONGEST_TEXT = 200;
  private static final int LONGEST_UNIT = 60;

  public UnmappedCode {
    Objects.requireNonNull(code, "code");
  }

  /**
   * As a feed sent it.
   *
   * @return empty if it is no code that anybody could map: blank, longer than the codes of any
   *     coding system, or with characters that no code has. The refusal has it all the same
   */
  public static Optional<UnmappedCode> of(
      String source,
      String system,
      @Nullable String code,
      @Nullable String text,
      @Nullable String unit) {
    if (code == null || code.isBlank() || !plain(code, LONGEST_CODE)) {
      return Optional.empty();
    }
    return plain(source, LONGEST_CODE) && plain(system, LONGEST_CODE)
        ? Optional.of(
            new UnmappedCode(
                new ForeignCode(source, system, code),
                said(text, LONGEST_TEXT),
                said(unit, LONGEST_UNIT)))
        : Optional.empty();
  }

  private static @Nullable String said(@Nullable String words, int longest) {
    return words == null || words.isBlank() || !plain(words, longest) ? null : words;
  }

  private static boolean plain(String text, int longest) {
    return text.length() <= longest && text.codePoints().noneMatch(UnmappedCode::belongsInNoCode);
  }

  /** Half a character is none, and no text of a database holds a NUL. */
  private static boolean belongsInNoCode(int character) {
    return Character.isISOControl(character) || Character.getType(character) == Character.SURROGATE;
  }
}
