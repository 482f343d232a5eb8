package org.driftward.deploy.embedded;

import java.util.Map;

/** Something real that runs beside the application until it is closed. */
public interface EmbeddedPart extends AutoCloseable {

  /** Configuration that leads the application to it, by the names of its properties. */
  Map<String, String> properties();

  @Override
  void close();
}
