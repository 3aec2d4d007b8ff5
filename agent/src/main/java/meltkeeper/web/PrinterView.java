package meltkeeper.web;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
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
public record PrinterView(String name, @JsonProperty("hot_ends") List<HotEndView> hotEnds) {

  /** One hot end; what was never heard is null in JSON. */
  public record HotEndView(
      int index,
      OptionalDouble celsius,
      @JsonProperty("target_celsius") OptionalDouble targetCelsius,
      @JsonProperty("heater_duty") OptionalDouble heaterDuty,
      Optional<String> state,
      String job,
      String material,
      OptionalDouble progress,
      @JsonUnwrapped TallyAnswer total) {

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
          TallyAnswer.of(live.total()));
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
