package org.driftward.dashboard.screen;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.RefusalPage;
import org.jspecify.annotations.Nullable;

/**
 * The feeds, the files, and what was refused.
 *
 * @param refusals one page of them
 * @param rules the reasons that can be asked for
 * @param next path of the next page, or empty on the last
 */
public record IntakeScreen(
    List<FeedLine> feeds,
    List<FileLine> files,
    List<RefusalLine> refusals,
    List<String> rules,
    Asked asked,
    String next) {

  /** A choice of a list, with its words. */
  public record Choice(String value, String words) {}

  /** The filter as its form shows it; an empty text is no condition. */
  public record Asked(
      String source, String rule, String from, String to, boolean open, String after) {

    private static final DateTimeFormatter FORM =
        DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ROOT);

    static Asked of(Filter filter, ZoneId zone) {
      return new Asked(
          filter.source() == null ? "" : filter.source().word(),
          filter.rule() == null ? "" : filter.rule(),
          time(filter.from(), zone),
          time(filter.to(), zone),
          filter.open(),
          filter.after() == null ? "" : filter.after());
    }

    private static String time(@Nullable Instant time, ZoneId zone) {
      return time == null ? "" : FORM.format(time.atZone(zone));
    }

    String path(String last) {
      var query = new StringJoiner("&", "/intake?", "#refused");
      add(query, "source", source);
      add(query, "rule", rule);
      add(query, "from", from);
      add(query, "to", to);
      add(query, "all", open ? "" : "yes");
      add(query, "after", last);
      return query.toString();
    }

    private static void add(StringJoiner query, String name, String value) {
      if (!value.isEmpty()) {
        query.add(name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8));
      }
    }
  }

  public static IntakeScreen of(
      List<Feed> feeds,
      List<FileImport> files,
      RefusalPage page,
      Filter filter,
      Instant now,
      ZoneId zone) {
    var asked = Asked.of(filter, zone);
    var next = page.next();
    return new IntakeScreen(
        feeds.stream().map(feed -> FeedLine.of(feed, now)).toList(),
        files.stream().map(FileLine::of).toList(),
        page.lines().stream().map(RefusalLine::of).toList(),
        page.rules(),
        asked,
        next == null ? "" : asked.path(next));
  }

  /** The ways in, for the filter. */
  public List<Choice> ways() {
    return Arrays.stream(Source.values())
        .map(source -> new Choice(source.word(), IntakeWords.way(source)))
        .toList();
  }
}
