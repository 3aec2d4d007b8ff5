package meltkeeper.cli.manual;

import java.util.List;
import java.util.Locale;

/** A text in the {@code man} macros of roff, as it grows. Mutable. */
final class Roff {

  private final StringBuilder text = new StringBuilder();

  /**
   * The beginning of a page.
   *
   * @param foot at the left of the page's foot
   */
  Roff(String name, int section, String foot) {
    line(
        ".TH \"%s\" \"%d\" \"\" \"%s\" \"User Commands\""
            .formatted(escaped(name).toUpperCase(Locale.ROOT), section, escaped(foot)));
  }

  Roff section(String title) {
    return line(".SH " + escaped(title));
  }

  Roff subsection(String title) {
    return line(".SS \"" + escaped(title) + "\"");
  }

  Roff paragraph(String words) {
    return line(".PP").line(escaped(words));
  }

  /** A term, and below it what it means. */
  Roff item(String term, String words) {
    return line(".TP").line("\\fB" + escaped(term) + "\\fR").line(escaped(words));
  }

  /** Lines that are shown as they stand. */
  Roff verbatim(List<String> lines) {
    line(".PP").line(".nf");
    lines.forEach(plain -> line(escaped(plain)));
    return line(".fi");
  }

  /** A line that roff reads as it is. */
  Roff line(String raw) {
    text.append(raw).append('\n');
    return this;
  }

  /** Words that roff shows as they are: no escapes, no requests, no hyphens that break a copy. */
  static String escaped(String words) {
    String plain = words.replace("\\", "\\e").replace("-", "\\-").replace("\"", "\\(dq");
    return plain.startsWith(".") || plain.startsWith("'") ? "\\&" + plain : plain;
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
