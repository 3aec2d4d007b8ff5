package meltkeeper.config;

import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Pattern;

/** The forms of plain values. */
final class Forms {

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(\\d{1,40}(\\.\\d{0,40})?|\\.\\d{1,40})([eE][-+]?\\d{1,3})?");
  private static final Pattern WHOLE = Pattern.compile("[-+]?\\d{1,9}");

  private Forms() {}

  /** A number within a closed range. */
  static Form<Double> number(String least, String most, String unit) {
    double from = Double.parseDouble(least);
    double to = Double.parseDouble(most);
    return Form.of(
        least + " to " + most + ", " + unit,
        "",
        text -> decimal(text).filter(value -> value >= from && value <= to));
  }

  /** A number above a bound. */
  static Form<Double> numberAbove(String bound, String most, String unit) {
    double from = Double.parseDouble(bound);
    double to = Double.parseDouble(most);
    return Form.of(
        "above " + bound + ", to " + most + (unit.isEmpty() ? "" : ", " + unit),
        "",
        text -> decimal(text).filter(value -> value > from && value <= to));
  }

  /** Any finite number; whether it fits is for the room that it sets. */
  static Form<Double> anyNumber(String allowed) {
    return Form.of(allowed, "", Forms::decimal);
  }

  static Form<Integer> whole(int least, int most, String unit) {
    return Form.of(
        least + " to " + most + ", " + unit,
        "",
        text ->
            Optional.of(text)
                .filter(whole -> WHOLE.matcher(whole).matches())
                .map(Integer::parseInt)
                .filter(value -> value >= least && value <= most));
  }

  static Form<Duration> duration(String least, String most) {
    Duration from = Span.of(least).orElseThrow();
    Duration to = Span.of(most).orElseThrow();
    return Form.of(
        least + " to " + most,
        "write a whole number and its unit, ms, s, m, h or d: 2s",
        text ->
            Span.of(text).filter(value -> value.compareTo(from) >= 0 && value.compareTo(to) <= 0));
  }

  static Form<String> text(int longest) {
    return Form.of(
        "1 to " + longest + " characters",
        "",
        text ->
            Optional.of(text)
                .filter(words -> !words.isBlank() && words.length() <= longest)
                .filter(words -> words.chars().noneMatch(Character::isISOControl)));
  }

  /** A name that stands in a section; whether it does is for the reader to check. */
  static Form<String> name(String section) {
    return Form.of("a name from " + section, "", Optional::of);
  }

  static Form<Path> path(String allowed) {
    return Form.of(allowed, "", Forms::pathOf);
  }

  /** The path of a text, if the computer's file systems can have it. */
  static Optional<Path> pathOf(String text) {
    try {
      return text.isBlank() ? Optional.empty() : Optional.of(Path.of(text));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  static Form<HostPort> hostPort(int leastPort, String mend) {
    return Form.of(
        "host:port, the port being " + leastPort + " to " + HostPort.MAX_PORT,
        mend,
        text -> HostPort.of(text).filter(address -> address.port() >= leastPort));
  }

  static Form<ZoneId> zone() {
    return Form.of(
        "a name of the IANA time zone database, or UTC",
        "write it as Continent/City",
        text -> {
          try {
            return Optional.of(ZoneId.of(text));
          } catch (DateTimeException e) {
            return Optional.empty();
          }
        });
  }

  static Form<URI> broker() {
    return new Form<>(BrokerUrl.ALLOWED, BrokerUrl::fault, BrokerUrl::of);
  }

  private static Optional<Double> decimal(String text) {
    return NUMBER.matcher(text).matches()
        ? Optional.of(new BigDecimal(text).doubleValue()).filter(Double::isFinite)
        : Optional.empty();
  }
}
