package org.driftward.ingest.config;

import java.time.ZoneId;
import org.eclipse.microprofile.config.spi.Converter;
import org.jspecify.annotations.Nullable;

/** A time zone by its IANA name. An empty setting is none, which the implicit converter refuses. */
public final class ZoneConverter implements Converter<ZoneId> {
  private static final long serialVersionUID = 1L;

  @Override
  public @Nullable ZoneId convert(String value) {
    return value.isBlank() ? null : ZoneId.of(value.strip());
  }
}
