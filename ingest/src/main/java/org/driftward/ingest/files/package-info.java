/**
 * Files of assessments: upload in parts, and the worker that brings their rows in. Start reading at
 * {@link org.driftward.ingest.files.ImportStep}.
 */
@NullMarked
package org.driftward.ingest.files;

import org.jspecify.annotations.NullMarked;
