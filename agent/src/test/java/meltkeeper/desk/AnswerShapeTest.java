package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class AnswerShapeTest {

  @Test
  void part_printsItsFactsBesideItsHistory() {
    Bench bench = new Bench();
    bench.hot(HERON, "2026-03-02T08:00:00Z", 1, 215);
    bench.add("liner");
    bench.fit("L-001", HERON, "2026-03-02T08:30:00Z");
    assertThat(AnswerJson.print(bench.desk.parts().part("L-001")))
        .isEqualTo(
            "{\"id\":\"L-001\",\"kind\":\"liner\",\"variant\":null,\"ending\":\"still-fitted\","
                + "\"fitted\":{\"printer\":\"heron\",\"hot_end\":0,"
                + "\"since\":\"2026-03-02T08:30:00Z\"},\"hot_hours\":0.500,"
                + "\"most_in\":\"215-220\",\"earlier_hours\":0.000,\"filament_metres\":0.600,"
                + "\"hot_seconds\":{\"215-220\":1800.000},\"bridged_seconds\":0.000,"
                + "\"unobserved_seconds\":0.000,\"idle_seconds\":0.000,"
                + "\"printing_seconds\":1800.000,\"filament_commanded_mm\":600.000,"
                + "\"filament_measured_mm\":0.000,\"added\":\"2026-03-02T08:30:00Z\","
                + "\"stays\":[{\"printer\":\"heron\",\"hot_end\":0,"
                + "\"from\":\"2026-03-02T08:30:00Z\",\"until\":null,\"hot_hours\":0.500,"
                + "\"shared\":[]}],\"history\":[{\"at\":\"2026-03-02T08:30:00Z\","
                + "\"what\":\"fitted on heron\",\"detail\":\"\"}]}");
  }
}
