package meltkeeper.cli.calls;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meltkeeper.cli.outlook.Words;
import meltkeeper.outlook.Batch;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.outlook.RiskAnswer;
import meltkeeper.outlook.RiskQuestion;
import meltkeeper.part.Exposure;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episodes;
import meltkeeper.store.Subject;

/**
 * Calls when a batch that runs may not get through: once a batch, and it is over with the batch.
 * How much is to come is told by the printer's progress; by its usual batch where it publishes
 * none; else by nobody, and then nobody is called. For one thread.
 */
final class BatchCalls {

  /** A printer unheard for so long is taken to have ended its batch. */
  static final long SILENT_NANOS = 3_600_000_000_000L;

  private static final long ASK_EVERY_NANOS = 60_000_000_000L;

  private final OutlookDesk desk;
  private final BatchLimits limits;
  private final Episodes episodes;
  private final Map<String, RunningBatch> running = new HashMap<>();
  private final Set<String> idle = new HashSet<>();
  private final Map<String, OptionalDouble> usual = new HashMap<>();
  private final Map<String, Long> askedNanos = new HashMap<>();

  BatchCalls(OutlookDesk desk, BatchLimits limits, Episodes episodes) {
    this.desk = desk;
    this.limits = limits;
    this.episodes = episodes;
  }

  /** Looks at what runs. Whatever is to be told is pending with the episodes then. */
  void look(List<HotEndLive> hotEnds, Arrival now) {
    hotEnds.stream()
        .collect(
            Collectors.groupingBy(h -> h.hotEnd().printer(), TreeMap::new, Collectors.toList()))
        .forEach((printer, ofPrinter) -> look(printer, ofPrinter, now));
  }

  private void look(String printer, List<HotEndLive> hotEnds, Arrival now) {
    Optional<HotEndLive> atWork = hotEnds.stream().filter(RunningBatch::runs).findFirst();
    boolean isKnown = hotEnds.stream().anyMatch(h -> h.state().isPresent());
    long heardNanos = hotEnds.stream().mapToLong(HotEndLive::heardNanos).max().orElse(0);
    boolean isLost = isKnown && now.steadyNanos() - heardNanos > SILENT_NANOS;
    if (!isKnown) {
      return;
    }
    if (atWork.isEmpty() || isLost) {
      over(printer, now, isLost ? "it has not been heard for an hour" : "the batch has ended");
      idle.add(printer);
      return;
    }
    RunningBatch known = running.get(printer);
    if (known != null && !known.isOf(atWork.get())) {
      over(printer, now, "another batch runs");
      idle.add(printer);
      known = null;
    }
    RunningBatch batch =
        (known == null
                ? RunningBatch.first(atWork.get(), now.steadyNanos(), idle.remove(printer))
                : known)
            .seeing(atWork.get().progress(), now.steadyNanos());
    running.put(printer, batch);
    if (!episodes.isOpen(AlertTopic.BATCH_AT_RISK, new Subject.OfPrinter(printer))) {
      ask(printer, batch, atWork.get(), hotEnds, now);
    }
  }

  private void over(String printer, Arrival now, String why) {
    running.remove(printer);
    usual.remove(printer);
    askedNanos.remove(printer);
    episodes.end(
        AlertTopic.BATCH_AT_RISK,
        new Subject.OfPrinter(printer),
        now.steadyNanos(),
        printer + ": " + why + ".");
  }

  private void ask(
      String printer,
      RunningBatch running,
      HotEndLive atWork,
      List<HotEndLive> hotEnds,
      Arrival now) {
    long asked = askedNanos.getOrDefault(printer, now.steadyNanos() - ASK_EVERY_NANOS);
    OptionalDouble hours = hoursToCome(printer, running, atWork, now);
    if (hours.isEmpty() || now.steadyNanos() - asked < ASK_EVERY_NANOS) {
      return;
    }
    askedNanos.put(printer, now.steadyNanos());
    batch(hotEnds, hours.getAsDouble())
        .map(
            batch -> desk.risk(new RiskQuestion(printer, batch, Optional.empty()), now.wallNanos()))
        .filter(answer -> answer.any() > limits.atRiskAbove())
        .ifPresent(
            answer ->
                episodes.begin(
                    AlertTopic.BATCH_AT_RISK,
                    new Subject.OfPrinter(printer),
                    now.steadyNanos(),
                    false,
                    text(printer, running.job(), answer)));
  }

  private OptionalDouble hoursToCome(
      String printer, RunningBatch running, HotEndLive atWork, Arrival now) {
    if (atWork.progress().isPresent()) {
      return running.hoursToCome(atWork.progress().getAsDouble(), now.steadyNanos());
    }
    OptionalDouble usualHours =
        usual.computeIfAbsent(
            printer, p -> desk.usualBatchHours(atWork.hotEnd(), now.steadyNanos()));
    return usualHours.isPresent()
        ? running.hoursToComeOf(usualHours.getAsDouble(), now.steadyNanos())
        : OptionalDouble.empty();
  }

  /** What is to come, at the temperatures asked for; empty when nothing is or gets hot. */
  private Optional<Batch> batch(List<HotEndLive> hotEnds, double hours) {
    Map<Integer, Exposure> hot = new TreeMap<>();
    double hottest = 0;
    for (HotEndLive hotEnd : hotEnds) {
      double celsius = hotEnd.targetCelsius().orElse(hotEnd.celsius().orElse(0));
      if (hours > 0 && celsius > limits.hotAboveCelsius().applyAsDouble(hotEnd.hotEnd())) {
        hot.put(hotEnd.hotEnd().index(), Exposure.of(celsius, hours));
        hottest = Math.max(hottest, celsius);
      }
    }
    return hot.isEmpty()
        ? Optional.empty()
        : Optional.of(new Batch(hot, hours, hottest, List.of()));
  }

  private static String text(String printer, String job, RiskAnswer answer) {
    String parts =
        answer.parts().stream()
            .map(
                part ->
                    part.id()
                        + " ("
                        + part.kind()
                        + ") "
                        + Words.percent(part.failureProbability().mean()))
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "%s has about %s h of %s to go, and with %s a part fails within them: %s. While little of"
            + " it is printed, stopping to swap costs least; else be there when it fails.",
        printer,
        Words.number(answer.hours()),
        job.isEmpty() ? "its batch" : job,
        Words.percent(answer.any()),
        parts);
  }
}
