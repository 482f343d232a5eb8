package org.driftward.deploy.embedded;

/** An embedded part that takes connections on a port of loopback. */
public interface Listening extends EmbeddedPart {

  int port();
}
