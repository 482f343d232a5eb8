package org.driftward.ingest.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.driftward.ingest.contract.Catalogue;
import org.junit.jupiter.api.Test;

/**
 * Keeps docs/catalogue.md as the catalogue is. To write it anew: {@code mvn -pl ingest test
 * -Dtest=CatalogueDocTest -Ddriftward.write-docs=true}.
 */
class CatalogueDocTest {

  private static final Path PAGE = Path.of("..", "docs", "catalogue.md");

  @Test
  void shouldDocumentTheCatalogueAsItIs() throws IOException {
    var page = CataloguePage.of(Catalogue.shipped());
    if (Boolean.getBoolean("driftward.write-docs")) {
      Files.createDirectories(PAGE.getParent());
      Files.writeString(PAGE, page);
    }

    assertThat(PAGE).hasContent(page);
  }
}
