package meltkeeper.caution;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import meltkeeper.caution.Caution.Sort;
import meltkeeper.protocol.Sample;

/** One reading's effect on a lookout. */
record Step(Lookout before, Guard guard, Consumer<Caution> found, Sample sample) {

  private long at() {
    return sample.atNanos();
  }

  private void over(Sort sort, double celsius) {
    found.accept(new Caution.Over(before.hotEnd(), at(), sort, celsius));
  }

  private OptionalLong heardNow() {
    if (sample.retained()) {
      return before.heardNanos();
    }
    over(Sort.SILENT, before.celsius().orElse(0));
    return OptionalLong.of(sample.arrivalNanos());
  }

  Lookout heard() {
    return with(before.idleSinceNanos(), before.isPrinting(), before.fedMillimetres());
  }

  Lookout job(boolean printing) {
    return with(printing ? busy() : before.idleSinceNanos(), printing, before.fedMillimetres());
  }

  Lookout fed(double millimetres) {
    boolean moved =
        before.fedMillimetres().isPresent() && millimetres > before.fedMillimetres().getAsDouble();
    return with(
        moved ? busy() : before.idleSinceNanos(),
        before.isPrinting(),
        OptionalDouble.of(millimetres));
  }

  private OptionalLong busy() {
    over(Sort.IDLE_HOT, before.celsius().orElse(0));
    return OptionalLong.empty();
  }

  private Lookout with(OptionalLong idleSince, boolean printing, OptionalDouble fed) {
    return new Lookout(
        before.hotEnd(),
        before.celsius(),
        before.aboveSinceNanos(),
        idleSince,
        before.atNanos(),
        printing,
        fed,
        heardNow());
  }

  Lookout temperature(double celsius) {
    return new Lookout(
        before.hotEnd(),
        OptionalDouble.of(celsius),
        above(celsius),
        idle(celsius),
        at(),
        before.isPrinting(),
        before.fedMillimetres(),
        heardNow());
  }

  private OptionalLong above(double celsius) {
    double limit = guard.limitCelsius().orElse(Double.POSITIVE_INFINITY);
    if (!(celsius > limit)) {
      if (celsius < limit - Guard.HYSTERESIS_KELVIN) {
        over(Sort.TOO_HOT, celsius);
      }
      return OptionalLong.empty();
    }
    long since = before.aboveSinceNanos().orElse(at());
    if (at() - since >= Lookout.SETTLE_NANOS) {
      found.accept(new Caution.TooHot(before.hotEnd(), at(), celsius, limit));
    }
    return OptionalLong.of(since);
  }

  private OptionalLong idle(double celsius) {
    if (!(celsius > guard.hotAboveCelsius())) {
      over(Sort.IDLE_HOT, celsius);
      return OptionalLong.empty();
    }
    if (before.isPrinting()) {
      return OptionalLong.empty();
    }
    boolean observed =
        before.celsius().isPresent() && at() - before.atNanos() <= Lookout.IDLE_GAP_NANOS;
    long since = observed ? before.idleSinceNanos().orElse(at()) : at();
    if (at() - since >= guard.idleNanos()) {
      found.accept(new Caution.IdleHot(before.hotEnd(), at(), celsius, at() - since));
    }
    return OptionalLong.of(since);
  }
}
