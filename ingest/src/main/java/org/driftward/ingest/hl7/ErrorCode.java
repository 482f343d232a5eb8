package org.driftward.ingest.hl7;

import java.util.Locale;
import org.driftward.ingest.core.Rule;

/** HL7 table 0357, message error condition codes, as far as we use it. */
enum ErrorCode {
  REQUIRED_FIELD_MISSING(101, "Required field missing"),
  DATA_TYPE_ERROR(102, "Data type error"),
  TABLE_VALUE_NOT_FOUND(103, "Table value not found"),
  UNSUPPORTED_MESSAGE_TYPE(200, "Unsupported message type"),
  UNSUPPORTED_EVENT_CODE(201, "Unsupported event code"),
  UNSUPPORTED_PROCESSING_ID(202, "Unsupported processing id"),
  UNSUPPORTED_VERSION_ID(203, "Unsupported version id"),
  UNKNOWN_KEY_IDENTIFIER(204, "Unknown key identifier"),
  INTERNAL_ERROR(207, "Application internal error");

  private final int code;
  private final String words;

  ErrorCode(int code, String words) {
    this.code = code;
    this.words = words;
  }

  int code() {
    return code;
  }

  String words() {
    return words;
  }

  /** The code that comes closest to a rule of ours. 207 is kept for what may be sent again. */
  static ErrorCode of(String ruleWord) {
    var rule = Rule.valueOf(ruleWord.toUpperCase(Locale.ROOT).replace('-', '_'));
    return switch (rule) {
      case MISSING_FIELD, MISSING_SITE, MISSING_SIDE, NO_FINDINGS, NO_REASON ->
          REQUIRED_FIELD_MISSING;
      case UNKNOWN_CODE,
          UNKNOWN_OPTION,
          UNKNOWN_SITE,
          UNKNOWN_SIDE,
          UNKNOWN_WORD,
          UNMAPPED_CODE,
          UNUSABLE_STATUS,
          WRONG_UNIT ->
          TABLE_VALUE_NOT_FOUND;
      case UNKNOWN_ENCOUNTER, MERGED_ENCOUNTER, CANCELLED_ENCOUNTER, OTHER_PATIENT ->
          UNKNOWN_KEY_IDENTIFIER;
      default -> DATA_TYPE_ERROR;
    };
  }
}
