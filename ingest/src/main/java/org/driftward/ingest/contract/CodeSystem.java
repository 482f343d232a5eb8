package org.driftward.ingest.contract;

/**
 * The names of the code systems that interfaces use: two standards, and our own for what no
 * standard has a code for.
 */
public final class CodeSystem {

  public static final String LOINC = "http://loinc.org";

  /** Units of measure. */
  public static final String UCUM = "http://unitsofmeasure.org";

  /** The code is the catalogue's; as an answer, the option's. */
  public static final String FINDING = "urn:driftward:finding";

  /** Sites of the catalogue. */
  public static final String SITE = "urn:driftward:site";

  /** {@code left} and {@code right}. */
  public static final String SIDE = "urn:driftward:side";

  /** Ids of scores. */
  public static final String SCORE = "urn:driftward:score";

  /** Why something was refused. */
  public static final String RULE = "urn:driftward:rule";

  private CodeSystem() {}
}
