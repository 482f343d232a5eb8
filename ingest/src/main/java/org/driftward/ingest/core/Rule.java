package org.driftward.ingest.core;

import org.driftward.ingest.contract.Word;

/** Every rule that an input can break; its word is what programs read in a fault. */
public enum Rule implements Word {
  /** The bytes are not JSON. */
  MALFORMED_JSON,
  /** The request is larger than this installation takes at once. */
  TOO_MANY,
  MISSING_FIELD,
  /** A field that holds another type of JSON value than it should. */
  WRONG_TYPE,
  /** A word that is none of those allowed. */
  UNKNOWN_WORD,
  /** An identifier or text that is empty, too long, or holds characters that no text holds. */
  MALFORMED_TEXT,
  /** A time that is not ISO 8601 with an offset, or a date that is not ISO 8601. */
  MALFORMED_TIME,
  /** A number with more digits than any measurement has. */
  MALFORMED_NUMBER,
  REVISION_TOO_LOW,
  /** An amendment or retraction that does not say why. */
  NO_REASON,
  NO_FINDINGS,
  /** The same revision of the same assessment twice in one request. */
  DUPLICATE_ASSESSMENT,
  /** The same finding at the same site and side twice in one assessment. */
  DUPLICATE_FINDING,
  UNKNOWN_CODE,
  UNKNOWN_SITE,
  MISSING_SITE,
  UNKNOWN_SIDE,
  MISSING_SIDE,
  /** A quantity where the catalogue has a grade, and the like. */
  WRONG_KIND,
  WRONG_UNIT,
  UNKNOWN_OPTION,
  OUT_OF_RANGE,
  /** Two findings of one assessment that cannot both be true. */
  CONTRADICTION,
  UNKNOWN_ENCOUNTER,
  MERGED_ENCOUNTER,
  /** The admission was called off. */
  CANCELLED_ENCOUNTER,
  OTHER_PATIENT,
  IN_THE_FUTURE,
  BEFORE_ADMISSION,
  AFTER_DISCHARGE,
  RECORDED_BEFORE_TAKEN,
  DISCHARGED_BEFORE_ADMITTED,
  /** The bytes are not a resource of the standard they claim to follow. */
  MALFORMED_RESOURCE,
  /** A kind of message, an event, a version or a use of it that we do not take. */
  UNSUPPORTED,
  /** A status from which nobody can tell whether the value holds. */
  UNUSABLE_STATUS,
  /** A value that is only a bound, such as less than 5. */
  INEXACT_VALUE,
  /** A column of a file that nobody can understand, or one too few. */
  UNKNOWN_COLUMN,
  /** A row of a file that has no end, another number of cells than the header, or is no text. */
  MALFORMED_ROW,
  /** It speaks about a ward that whoever brings it in does not see. */
  OTHER_WARD,
  /** A replay of something that no gate takes, for example from inside the house. */
  NO_GATE,
  /** A code that means no finding of the catalogue: reported, but no reason to refuse the rest. */
  UNMAPPED_CODE
}
