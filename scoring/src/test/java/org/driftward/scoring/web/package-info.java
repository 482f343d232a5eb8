/** Tests of what scoring's calls write. */
@NullMarked
package org.driftward.scoring.web;

import org.jspecify.annotations.NullMarked;
