package meltkeeper.config;

import static meltkeeper.config.Key.NONE;
import static meltkeeper.config.Key.REQUIRED;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The keys that say what the shop's monitoring is given. */
final class MetricsKeys {

  /** All of them, in the order of the document. */
  static final List<Key<?>> LISTED = new ArrayList<>();

  static final Key<Duration> KEEP_REMOVED =
      key(Section.METRICS, "keep-removed", Forms.duration("0s", "30d"), "15m");
  static final Key<Void> OTLP = key(Section.METRICS, "otlp", Form.section("a section"), NONE);

  static final Key<URI> URL = key(Section.OTLP, "url", WebAddress.FORM, REQUIRED);
  static final Key<Duration> EVERY = key(Section.OTLP, "every", Forms.duration("1s", "1d"), "1m");
  static final Key<Void> HEADERS = key(Section.OTLP, "headers", AlertKeys.HEADERS.form(), NONE);
  static final Key<Path> TOKEN_FILE =
      key(Section.OTLP, "token-file", AlertKeys.TOKEN_FILE.form(), NONE);
  static final Key<Duration> TIMEOUT =
      key(Section.OTLP, "timeout", Forms.duration("500ms", "2m"), "10s");

  private MetricsKeys() {}

  private static <T> Key<T> key(Section section, String label, Form<T> form, String byDefault) {
    Key<T> key = new Key<>(section, label, form, byDefault);
    LISTED.add(key);
    return key;
  }
}
