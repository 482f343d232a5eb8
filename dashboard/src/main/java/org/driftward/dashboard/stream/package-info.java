/**
 * What moves: the topics into the read model ({@link
 * org.driftward.dashboard.stream.ReadModelPart}), and the news of a changed ward from whichever
 * process made the change to every browser that watches it ({@link
 * org.driftward.dashboard.stream.WardListener}, {@link org.driftward.dashboard.stream.LiveBoards}).
 */
@NullMarked
package org.driftward.dashboard.stream;

import org.jspecify.annotations.NullMarked;
