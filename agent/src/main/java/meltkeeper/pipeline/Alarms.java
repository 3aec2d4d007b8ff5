package meltkeeper.pipeline;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meltkeeper.caution.Caution;
import meltkeeper.caution.Guard;
import meltkeeper.caution.Lookout;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Level;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episodes;
import meltkeeper.store.OpenEpisode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;

/** Turns what the readings show into alerts for the next commit. For the writer's thread. */
final class Alarms {

  private static final Map<AlertTopic, Level> JAMS =
      Map.of(
          AlertTopic.JAM_NARROWING, Level.NARROWING,
          AlertTopic.JAM_STALLED, Level.STALLED,
          AlertTopic.JAM_BLIND, Level.BLIND);

  /** A batch without a working jam watch for so long is worth a call. */
  private static final long BLIND_FOR_LONG_NANOS = 1_800_000_000_000L;

  private final Map<HotEnd, Finding> findings = new HashMap<>();
  private final Calling calling;
  private final Episodes episodes;
  private final Map<HotEnd, Guard> guards = new HashMap<>();
  private final Map<HotEnd, Lookout> lookouts = new HashMap<>();
  private final Map<HotEnd, Lag> lags = new HashMap<>();
  private final Map<String, Long> heardNanos = new HashMap<>();
  private final Map<HotEnd, Double> limitsCelsius = new HashMap<>();

  Alarms(Calling calling, List<OpenEpisode> open) {
    this.calling = calling;
    this.episodes = new Episodes(calling.routes(), open);
  }

  /** Looks which parts are fitted, and what they stand. */
  void noteFitted(Collection<Part> parts) {
    limitsCelsius.clear();
    guards.clear();
    for (Part part : parts) {
      Double limit = calling.limitsCelsius().get(part.kind());
      if (limit != null) {
        part.fittedOn().ifPresent(hotEnd -> limitsCelsius.merge(hotEnd, limit, Math::min));
      }
    }
  }

  private Guard guard(HotEnd hotEnd) {
    return guards.computeIfAbsent(
        hotEnd,
        h -> {
          Double limit = limitsCelsius.get(h);
          return calling
              .guards()
              .apply(h)
              .withLimit(limit == null ? OptionalDouble.empty() : OptionalDouble.of(limit));
        });
  }

  /** Takes a reading that counts, or a retained one. */
  void take(Reading reading) {
    Sample sample = reading.sample();
    HotEnd hotEnd = sample.hotEnd();
    if (!sample.retained()) {
      heardNanos.merge(hotEnd.printer(), sample.arrivalNanos(), Math::max);
      lags.merge(hotEnd, Lag.of(sample), (known, now) -> known.next(sample));
    }
    Finding standing = findings.get(hotEnd);
    if (standing != null) {
      hold(standing, sample);
    }
    Lookout before = lookouts.computeIfAbsent(hotEnd, Lookout::on);
    lookouts.put(
        hotEnd, before.step(guard(hotEnd), reading, caution -> tell(caution, isPast(sample))));
  }

  /** Takes a change of level of a jam watch. */
  void take(Finding finding, Sample sample) {
    Subject subject = new Subject.OfHotEnd(finding.hotEnd());
    JAMS.forEach(
        (topic, level) -> {
          if (level != finding.level() && episodes.isOpen(topic, subject)) {
            episodes.end(topic, subject, finding.atNanos(), JamWords.text(finding));
          }
        });
    findings.put(finding.hotEnd(), finding);
    hold(finding, sample);
  }

  /** A level that holds: what began among old readings calls once they are current. */
  private void hold(Finding finding, Sample sample) {
    boolean isLong = sample.atNanos() - finding.atNanos() >= BLIND_FOR_LONG_NANOS;
    JAMS.forEach(
        (topic, level) -> {
          if (level == finding.level() && (level != Level.BLIND || isLong)) {
            episodes.begin(
                topic,
                new Subject.OfHotEnd(finding.hotEnd()),
                finding.atNanos(),
                isPast(sample),
                JamWords.text(finding) + whatIsDone(finding));
          }
        });
  }

  private String whatIsDone(Finding finding) {
    return finding.level() == Level.STALLED
        ? calling.actsAfter().apply(finding.hotEnd()).map(JamWords::actsAfter).orElse("")
        : "";
  }

  private boolean isPast(Sample sample) {
    Lag lag = lags.get(sample.hotEnd());
    return lag != null && lag.isPast(sample, calling.oldNanos());
  }

  /** Looks at the steady clock. */
  void look(long nowNanos) {
    lookouts.forEach(
        (hotEnd, lookout) ->
            lookout.look(
                guard(hotEnd),
                heardNanos.getOrDefault(hotEnd.printer(), nowNanos),
                nowNanos,
                caution -> tell(caution, false)));
  }

  private void tell(Caution caution, boolean isPast) {
    AlertTopic topic = topic(caution.sort());
    Subject subject =
        topic == AlertTopic.PRINTER_SILENT
            ? new Subject.OfPrinter(caution.hotEnd().printer())
            : new Subject.OfHotEnd(caution.hotEnd());
    if (!(caution instanceof Caution.Over)) {
      episodes.begin(topic, subject, caution.atNanos(), isPast, caution.text());
    } else if (episodes.isOpen(topic, subject)) {
      episodes.end(topic, subject, caution.atNanos(), caution.text());
    }
  }

  private static AlertTopic topic(Caution.Sort sort) {
    return switch (sort) {
      case TOO_HOT -> AlertTopic.TOO_HOT;
      case IDLE_HOT -> AlertTopic.IDLE_HOT;
      case SILENT -> AlertTopic.PRINTER_SILENT;
    };
  }

  List<Posting> pending() {
    return episodes.pending();
  }

  void posted() {
    episodes.posted();
  }
}
