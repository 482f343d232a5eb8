package org.driftward.ingest.files;

import java.util.Locale;
import java.util.Optional;

/** What a file of assessments may be. */
enum FileFormat {
  /** RFC 4180, or as a mapping describes it. */
  CSV("text/csv"),
  /** One JSON object on each line, as {@code POST /api/assessments} takes it. */
  NDJSON("application/x-ndjson");

  private final String type;

  FileFormat(String type) {
    this.type = type;
  }

  /** Parameters of the media type do not matter here. */
  static Optional<FileFormat> of(String contentType) {
    for (var format : values()) {
      var essence = contentType.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
      if (essence.equals(format.type)) {
        return Optional.of(format);
      }
    }
    return Optional.empty();
  }
}
