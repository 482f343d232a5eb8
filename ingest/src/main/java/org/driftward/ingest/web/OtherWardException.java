package org.driftward.ingest.web;

/** It speaks about a ward that whoever sends it does not see. */
final class OtherWardException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  static final String DETAIL = "This account does not see the encounter's ward";

  OtherWardException() {
    super(DETAIL);
  }
}
