/** What the JSON calls and the pages share: who is asking, and what they may see. */
@NullMarked
package org.driftward.dashboard.web;

import org.jspecify.annotations.NullMarked;
