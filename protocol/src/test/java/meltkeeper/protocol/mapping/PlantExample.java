package meltkeeper.protocol.mapping;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;

/** The mappings that the documentation of the configuration shows. */
final class PlantExample {

  private PlantExample() {}

  static final Mapping STATUS_JSON =
      new Mapping(
          "status-json",
          List.of(
              new MessageRule(
                  TopicPattern.of("plant/{printer}/status"),
                  PayloadForm.JSON,
                  Heard.time("/at", TimeFormat.ISO),
                  List.of(
                      Heard.plain(Signal.HOT_END_TEMPERATURE, "/hotend/now"),
                      Heard.plain(Signal.HOT_END_TARGET, "/hotend/set"),
                      Heard.scaled(Signal.HEATER_DUTY, "/hotend/pwm", 0.0078740157, 0),
                      Heard.plain(Signal.FILAMENT_COMMANDED, "/feed/asked"),
                      Heard.plain(Signal.FILAMENT_MEASURED, "/feed/seen"),
                      Heard.words(
                          "/job/state",
                          Map.of(
                              "RUN", JobState.PRINTING,
                              "HOLD", JobState.PAUSED,
                              "REST", JobState.IDLE)),
                      Heard.plain(Signal.JOB, "/job/name"),
                      Heard.plain(Signal.MATERIAL, "/spool/material")))));

  static final Mapping PLAIN_VALUES =
      new Mapping(
          "plain-values",
          List.of(
              new MessageRule(
                  TopicPattern.of("plant/{printer}/hotend/now"),
                  PayloadForm.NUMBER,
                  Optional.empty(),
                  List.of(Heard.plain(Signal.HOT_END_TEMPERATURE, "")))));

  static final String STATUS =
      """
      {"at":"2026-03-02T08:00:00.250Z","hotend":{"now":214.9,"set":215.0,"pwm":54},\
      "feed":{"asked":1234.5,"seen":1230.25},"job":{"state":"RUN","name":"drawer-organiser-4"},\
      "spool":{"material":"PLA"},"fan":{"rpm":4200}}""";

  static MappingDecoder decoder() {
    return new MappingDecoder(
        List.of(
            new Route(STATUS_JSON, Set.of("heron", "ibis")),
            new Route(PLAIN_VALUES, Set.of("egret"))));
  }
}
