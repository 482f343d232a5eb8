/**
 * The whole way, on the packaged application as a process of its own, with its real broker and
 * database, each test on free ports and in a data folder of its own.
 */
package org.driftward.deploy.whole;
