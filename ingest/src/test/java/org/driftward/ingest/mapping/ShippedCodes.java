package org.driftward.ingest.mapping;

import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.core.mapping.CodeMap;
import org.driftward.ingest.core.mapping.CodeRules;
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.unit.UcumConversion;

/** What an installation knows of foreign codes before anybody says more. */
public final class ShippedCodes {

  public static final CodeRules RULES =
      new CodeRules(Catalogue.shipped(), new UcumConversion()::convert);

  public static final CodeMap MAP =
      CodeMap.firstOf(List.of(CodeMapFile.shipped(RULES), CodeTable.of(RULES.catalogue())));

  private ShippedCodes() {}
}
