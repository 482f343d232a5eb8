@NullMarked
package org.driftward.scoring.stream.state;

import org.jspecify.annotations.NullMarked;
