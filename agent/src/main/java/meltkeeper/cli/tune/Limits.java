package meltkeeper.cli.tune;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import meltkeeper.config.Span;
import meltkeeper.protocol.Fault;

/** The wanted hours between two false alarms that are to be tried. */
public final class Limits {

  private static final Duration LEAST = Duration.ofHours(1);
  private static final Duration MOST = Duration.ofHours(100_000);
  private static final String ALLOWED = "intervals from 1h to 100000h, as 300h,1000h";

  private Limits() {}

  /** Those tried when nobody names any: a row from restless to deaf, and the one configured. */
  public static List<Double> usual(double configuredHours) {
    return sorted(DoubleStream.of(100, 300, 1000, 3000, 10_000, configuredHours));
  }

  /** Those of a text such as {@code 300h,1000h}; adds a fault for each that is none. */
  public static List<Double> of(String text, List<Fault> faults) {
    List<Double> hours = new ArrayList<>();
    for (String each : text.split(",", -1)) {
      Optional<Duration> span =
          Span.of(each.strip()).filter(s -> s.compareTo(LEAST) >= 0 && s.compareTo(MOST) <= 0);
      if (span.isPresent()) {
        hours.add(span.get().toSeconds() / 3600.0);
      } else {
        faults.add(Fault.of("--tune", each, ALLOWED));
      }
    }
    return sorted(hours.stream().mapToDouble(h -> h));
  }

  private static List<Double> sorted(DoubleStream hours) {
    return hours.distinct().sorted().boxed().toList();
  }
}
