package meltkeeper.cli.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import meltkeeper.desk.Report;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.life.Estimate;
import meltkeeper.outlook.KindCurves;
import org.junit.jupiter.api.Test;

class ReportFormatTest {

  private static final Report.Costs COSTS =
      new Report.Costs(amount("4.50"), amount("6.25"), amount("18.00"), amount("28.75"));

  private static final Report REPORT =
      new Report(
          Instant.parse("2026-03-01T00:00:00Z"),
          Instant.parse("2026-03-08T00:00:00Z"),
          "Europe/Vienna",
          "EUR",
          List.of(
              hotEnd("heron", Map.of("215-220", amount("36000.000")), List.of(swap()), 1, COSTS),
              hotEnd(
                  "<ibis>", Map.of("95-100", amount("1800.000")), List.of(), 0, Report.Costs.NONE)),
          COSTS,
          List.of("kind sleeve is not in the configuration: its price counts as 0"));

  private static final KindCurves CURVES =
      new KindCurves(
          220,
          List.of(250.0, 500.0, 750.0),
          List.of(
              new Estimate(0.9, 0.8, 0.9, 0.95),
              new Estimate(0.5, 0.4, 0.5, 0.6),
              new Estimate(0.1, 0.05, 0.1, 0.2)),
          List.of(40.0, 30.0, 35.0),
          OptionalDouble.of(450),
          List.of(new KindCurves.Tick("L-1", 400, true), new KindCurves.Tick("L-2", 300, false)));

  private static BigDecimal amount(String value) {
    return new BigDecimal(value);
  }

  private static Report.Swap swap() {
    return new Report.Swap(
        Instant.parse("2026-03-02T12:00:00Z"),
        "L-014",
        "liner",
        "jam",
        true,
        amount("512.460"),
        COSTS);
  }

  private static Report.OfHotEnd hotEnd(
      String printer,
      Map<String, BigDecimal> hot,
      List<Report.Swap> swaps,
      int jams,
      Report.Costs costs) {
    BigDecimal zero = amount("0.000");
    return new Report.OfHotEnd(
        printer,
        0,
        amount("10.000"),
        amount("8.250"),
        amount("30.125"),
        new TallyAnswer(new TreeMap<>(hot), zero, amount("1800.000"), zero, zero, zero, zero),
        swaps,
        jams,
        costs);
  }

  @Test
  void text_alignsItsTablesAndNamesUnits() {
    assertThat(ReportFormat.TEXT.print(REPORT, Map::of).lines())
        .containsExactly(
            "From 2026-03-01 01:00 to 2026-03-08 01:00, zone Europe/Vienna",
            "",
            "Hot end  Hot h  Printing h  Filament m  Idle h  Bridged h  Unobserved h  Swaps  Jams"
                + "  Costs EUR",
            "heron     10.0         8.3        30.1     0.0        0.0           0.5      1     1"
                + "      28.75",
            "<ibis>    10.0         8.3        30.1     0.0        0.0           0.5      0     0"
                + "       0.00",
            "",
            "Hot end  Band °C  Hot h",
            "heron    215-220   10.0",
            "<ibis>   95-100     0.5",
            "",
            "When              Hot end  Part   Kind   Because             After h  Costs EUR",
            "2026-03-02 13:00  heron    L-014  liner  jam, not this part    512.5      28.75",
            "",
            "Costs: 28.75 EUR; parts 4.50, labour 6.25, jams 18.00",
            "Note: kind sleeve is not in the configuration: its price counts as 0.");
  }

  @Test
  void csv_hasOneRowAHotEnd_andAColumnForEachBandFromTheColdest() {
    assertThat(ReportFormat.CSV.print(REPORT, Map::of))
        .isEqualTo(
            "printer,hot_end,since,until,hot_hours,printing_hours,filament_m,idle_hours,"
                + "bridged_hours,unobserved_hours,swaps,jams,costs_parts,costs_labour,costs_jams,"
                + "costs_total,currency,hot_hours_95-100,hot_hours_215-220\r\n"
                + "heron,0,2026-03-01T00:00:00Z,2026-03-08T00:00:00Z,10.000,8.250,30.125,0.000,"
                + "0.000,0.500,1,1,4.50,6.25,18.00,28.75,EUR,0.000,10.000\r\n"
                + "<ibis>,0,2026-03-01T00:00:00Z,2026-03-08T00:00:00Z,10.000,8.250,30.125,0.000,"
                + "0.000,0.500,0,0,0.00,0.00,0.00,0.00,EUR,0.500,0.000\r\n");
  }

  @Test
  void json_isOneObjectWithTheSameNouns() {
    assertThat(ReportFormat.JSON.print(REPORT, Map::of))
        .startsWith(
            "{\"since\":\"2026-03-01T00:00:00Z\",\"until\":\"2026-03-08T00:00:00Z\","
                + "\"zone\":\"Europe/Vienna\",\"currency\":\"EUR\",\"hot_ends\":[{"
                + "\"printer\":\"heron\",\"hot_end\":0,\"hot_hours\":10.000,")
        .contains("\"hot_seconds\":{\"215-220\":36000.000}")
        .contains("\"not_this_part\":true,\"hot_hours\":512.460,\"costs\":{\"parts\":4.50,")
        .endsWith("}\n");
  }

  @Test
  void page_standsAlone_isEscaped_andCautions() {
    String page = ReportFormat.HTML.print(REPORT, () -> Map.of("liner", CURVES));
    assertThat(page)
        .startsWith("<!DOCTYPE html>")
        .contains("&lt;ibis&gt;", "jam, not this part", "28.75 EUR", "2026-03-02 13:00")
        .contains("width=device-width", "Hot metal burns", "no\nsafety device")
        .doesNotContain("<ibis>", "https://", "src=");
  }

  @Test
  void page_plotsHoursAndLivesWithTextBeside() {
    String page = ReportFormat.HTML.print(REPORT, () -> Map.of("liner", CURVES));
    assertThat(page.split("<svg ", -1)).as("hours of two hot ends, two curves").hasSize(1 + 4);
    assertThat(page)
        .contains("Half of the parts of kind liner are expected to be alive at about 500 h")
        .contains("The cheapest age costs 30.00 EUR per 1000 h. The advised age is 450 h.")
        .contains("replace at 450 h")
        .doesNotContain("style=\"");
    assertThat(ReportFormat.HTML.print(REPORT, Map::of)).doesNotContain("how long it lasts");
  }
}
