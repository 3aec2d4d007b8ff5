package meltkeeper.pipeline;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import meltkeeper.caution.Guard;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.AlertTopic;

/**
 * What calls whom.
 *
 * @param guards what each hot end is held to, before its parts are looked at
 * @param limitsCelsius by kind of part, of those that have one
 * @param routes by name, of those that want a topic
 * @param actsAfter when something is done about a hot end that has stalled, if anything
 * @param oldNanos a reading older than this on its arrival calls nobody
 */
public record Calling(
    Function<HotEnd, Guard> guards,
    Map<String, Double> limitsCelsius,
    Function<AlertTopic, List<String>> routes,
    Function<HotEnd, Optional<Duration>> actsAfter,
    long oldNanos) {

  /** For a replay: what is found is history. */
  public static final Calling NOBODY =
      new Calling(
          hotEnd -> new Guard(OptionalDouble.empty(), 600, Long.MAX_VALUE, Long.MAX_VALUE),
          Map.of(),
          topic -> List.of(),
          hotEnd -> Optional.empty(),
          0);

  public Calling {
    limitsCelsius = Map.copyOf(limitsCelsius);
  }
}
