/** Units of measure by UCUM. Our only knowledge of units is which one the catalogue asks for. */
@NullMarked
package org.driftward.ingest.unit;

import org.jspecify.annotations.NullMarked;
