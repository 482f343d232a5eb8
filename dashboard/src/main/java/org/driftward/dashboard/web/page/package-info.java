/**
 * The pages as web resources: who asks, may they see it, which screen, which template. What stands
 * on a page is decided in {@link org.driftward.dashboard.screen}; read {@link
 * org.driftward.dashboard.web.page.BoardPage} first.
 */
@NullMarked
package org.driftward.dashboard.web.page;

import org.jspecify.annotations.NullMarked;
