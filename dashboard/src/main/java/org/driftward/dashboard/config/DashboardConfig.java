package org.driftward.dashboard.config;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;

/** Settings of the dashboard. Durations are wall-clock time unless they say otherwise. */
@StaticInitSafe
@ConfigMapping(prefix = "driftward.dashboard")
public interface DashboardConfig {

  /**
   * From this possible total of the leading score on, an overdue set of observations is urgent and
   * the card rises on the board. 5 is NEWS2's threshold for an urgent response (RCP 2017).
   */
  @WithDefault("5")
  BigDecimal highScore();

  /** At most this many assessments and as many snapshots in one answer about a history. */
  @WithDefault("5000")
  int historyLimit();

  /** Threads of this process that read the topics, each with its own Kafka consumer. */
  @WithDefault("1")
  int readers();

  /** At most this many records of the topics are kept in one database transaction. */
  @WithDefault("500")
  int batch();

  Live live();

  SignIn signIn();

  Downtime downtime();

  /** Copies of the wards on paper for when the system is down. */
  interface Downtime {

    /** Folder of the copies, one HTML file for each ward; readable by the owner only. */
    @WithDefault("${driftward.data:data}/downtime")
    Path folder();

    /** How often they are made again. */
    @WithDefault("PT5M")
    Duration every();
  }

  /** The live board. */
  interface Live {

    /** Least time between two readings of one ward's board, however fast it changes. */
    @WithDefault("PT0.5S")
    Duration pause();

    /**
     * A board that hears of no change is read again after this: what is overdue changes by time.
     */
    @WithDefault("PT5S")
    Duration refresh();

    /**
     * A stream without news says that it is alive, and asks again who may see it. Our pages call
     * the line dead after 15 s of silence.
     */
    @WithDefault("PT5S")
    Duration heartbeat();

    /** A stream ends after this; the browser comes back by itself and is asked who it is. */
    @WithDefault("PT30M")
    Duration lifetime();
  }

  /** Passwords and failed sign-ins. Durations are in ward time, as the demo accelerates it. */
  interface SignIn {

    /** Cost of bcrypt: the work doubles with each step. */
    @WithDefault("12")
    int cost();

    /** A verified password is not hashed again for this long; programs send it with every call. */
    @WithDefault("PT1M")
    Duration remember();

    /** Failures of one account from one address before it has to wait. */
    @WithDefault("5")
    int failures();

    /** Failures of one account from anywhere before everybody has to wait for it. */
    @WithDefault("50")
    int failuresAnywhere();

    /** The first wait; doubles with every further failure. */
    @WithDefault("PT10S")
    Duration firstWait();

    /** The longest wait for one address; for one account from anywhere it stays the first wait. */
    @WithDefault("PT15M")
    Duration longestWait();

    /** Failures are forgotten this long after the last one. */
    @WithDefault("PT1H")
    Duration forget();
  }
}
