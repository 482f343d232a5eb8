package org.driftward.dashboard.web.page;

/** Text that becomes part of a page without passing through a template. */
final class Escape {

  private Escape() {}

  static String html(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
