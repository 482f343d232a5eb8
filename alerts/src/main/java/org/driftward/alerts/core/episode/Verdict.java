package org.driftward.alerts.core.episode;

/** What becomes of a person's action. */
public sealed interface Verdict {

  record Done(Decision decision) implements Verdict {}

  /** It does not apply to where the episode stands; somebody may have been faster. */
  record NoLongerApplies(String why) implements Verdict {}

  /** A field is missing or makes no sense. */
  record Incomplete(String field, String why) implements Verdict {}

  /** The person's role is not enough. */
  record NotAllowed(String why) implements Verdict {}
}
