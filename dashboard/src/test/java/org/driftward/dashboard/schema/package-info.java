/** The JSON Schemas of the topics: written from the records, checked against what is sent. */
@NullMarked
package org.driftward.dashboard.schema;

import org.jspecify.annotations.NullMarked;
