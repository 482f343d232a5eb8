/** Intake over HTTP: reads bytes, asks the core, hands over to the intake, answers. */
@NullMarked
package org.driftward.ingest.web;

import org.jspecify.annotations.NullMarked;
