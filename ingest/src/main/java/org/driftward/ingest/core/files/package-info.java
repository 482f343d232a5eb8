/**
 * Files of assessments, one in each row: how a file is cut into rows, what a header means, and how
 * a row becomes a request. Pure; knows neither a file nor a database.
 */
@NullMarked
package org.driftward.ingest.core.files;

import org.jspecify.annotations.NullMarked;
