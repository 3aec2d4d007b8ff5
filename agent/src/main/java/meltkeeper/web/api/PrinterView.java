package meltkeeper.web.api;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.JobState;

/**
 * A printer as the API and the page show it.
 *
 * @param name in the configuration
 * @param hotEnds by index
 */
public record PrinterView(String name, List<HotEndView> hotEnds) {

  /** One hot end; what was never heard is null in JSON. */
  public record HotEndView(
      int index,
      OptionalDouble celsius,
      OptionalDouble targetCelsius,
      OptionalDouble heaterDuty,
      Optional<String> state,
      String job,
      String material,
      OptionalDouble progress,
      @JsonUnwrapped TallyAnswer total,
      WatchView watch) {

    static HotEndView of(HotEndLive live) {
      return new HotEndView(
          live.hotEnd().index(),
          live.celsius(),
          live.targetCelsius(),
          live.heaterDuty(),
          live.state().map(JobState::word),
          live.job(),
          live.material(),
          live.progress(),
          TallyAnswer.of(live.total()),
          WatchView.of(live.watch()));
    }

    /** True when it would burn a hand. */
    @JsonIgnore
    public boolean isHot() {
      return celsius.orElse(0) > 50;
    }

    /** Its temperature, for a person. */
    public String temperature() {
      return celsius.isPresent()
          ? String.format(Locale.ROOT, "%.1f °C", celsius.getAsDouble())
          : "temperature not told";
    }

    /** What it is asked to hold, for a person. */
    public String target() {
      return targetCelsius.isEmpty()
          ? ""
          : targetCelsius.getAsDouble() > 0
              ? String.format(Locale.ROOT, "asked for %.0f °C", targetCelsius.getAsDouble())
              : "heater off";
    }

    /** What the printer does, for a person. */
    public String doing() {
      String what = state.orElse("state not told");
      String named = job.isEmpty() ? what : what + " " + job;
      String made = material.isEmpty() ? named : named + " in " + material;
      return progress.isEmpty() || state.filter("printing"::equals).isEmpty()
          ? made
          : String.format(Locale.ROOT, "%s, %.0f %%", made, progress.getAsDouble() * 100);
    }

    /** Hours above the hot threshold, for a person. */
    public String hotHours() {
      BigDecimal seconds =
          total.hotSeconds().values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
      return seconds.divide(BigDecimal.valueOf(3600), 1, RoundingMode.HALF_UP).toPlainString();
    }

    /** Metres of filament asked for, or seen where nothing tells what was asked. */
    public String filamentMetres() {
      BigDecimal millimetres = total.filamentCommandedMm().max(total.filamentMeasuredMm());
      return millimetres.divide(BigDecimal.valueOf(1000), 1, RoundingMode.HALF_UP).toPlainString();
    }
  }

  static List<PrinterView> of(Live live) {
    Map<String, List<HotEndView>> byPrinter = new LinkedHashMap<>();
    for (HotEndLive hotEnd : live.hotEnds()) {
      byPrinter
          .computeIfAbsent(hotEnd.hotEnd().printer(), name -> new ArrayList<>())
          .add(HotEndView.of(hotEnd));
    }
    return byPrinter.entrySet().stream()
        .map(entry -> new PrinterView(entry.getKey(), List.copyOf(entry.getValue())))
        .toList();
  }
}
