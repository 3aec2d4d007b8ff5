package meltkeeper.web.page;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.outlook.Due;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.plot.Gauge;
import meltkeeper.plot.Words;

/**
 * How far gone a fitted part is.
 *
 * @param id of the part
 * @param used share of the advised age, the middle of what is believed; empty when waiting is
 *     cheapest
 * @param gauge a bar with the 90 % range; empty like {@code used}
 * @param words the same in words, with the day it is due
 * @param overdue true when it is past the advised age
 */
public record Wear(
    String id,
    String kind,
    OptionalDouble used,
    Optional<String> gauge,
    String words,
    boolean overdue) {

  static Wear of(FittedOutlook part, Frame frame) {
    if (part.replaceAt().isEmpty()) {
      return new Wear(
          part.id(),
          part.kind(),
          OptionalDouble.empty(),
          Optional.empty(),
          frame.say("wear.waits", number(part.ageHours().p50())),
          false);
    }
    double limit = part.replaceAt().getAsDouble();
    double used = part.ageHours().p50() / limit;
    String words =
        frame.say(
                "wear.used",
                percent(used),
                percent(part.ageHours().p5() / limit),
                percent(part.ageHours().p95() / limit),
                number(part.ageHours().p50()),
                number(limit))
            + " "
            + due(part, used, frame);
    return new Wear(
        part.id(),
        part.kind(),
        OptionalDouble.of(used),
        Optional.of(
            new Gauge(
                    new Words(frame.say("wear.title", part.id()), words),
                    part.ageHours().p50(),
                    part.ageHours().p5(),
                    part.ageHours().p95(),
                    limit)
                .svg()),
        words,
        used >= 1);
  }

  private static String due(FittedOutlook part, double used, Frame frame) {
    if (used >= 1) {
      return frame.say("wear.overdue");
    }
    return part.due()
        .flatMap(Due::at)
        .map(at -> frame.say("wear.due", frame.times().day(at)))
        .orElseGet(() -> frame.say("wear.no-date"));
  }

  /** All of a hot end, the most worn first. */
  static List<Wear> of(List<FittedOutlook> parts, Frame frame) {
    return parts.stream()
        .map(part -> of(part, frame))
        .sorted(Comparator.comparingDouble((Wear wear) -> -wear.used().orElse(0)))
        .toList();
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }

  static String number(double value) {
    return String.format(Locale.ROOT, value < 9.95 ? "%.1f" : "%.0f", value);
  }
}
