package meltkeeper.desk;

import static meltkeeper.desk.Bench.NOW;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PaperDeskTest {

  private static final String TABLE =
      """
      id,kind,ended,temperature,hours
      P-1,liner,jam,215,400
      P-1,liner,jam,240,112.5
      P-2,liner,still-fitted,215,80
      Q-1,nozzle,precaution,220,600
      """;

  private final Bench bench = new Bench();

  private PaperAnswer take(String text) {
    return bench.desk.paper().take("past.csv", text, NOW);
  }

  private List<String> faults(String text) {
    return catchThrowableOfType(RefusedException.class, () -> take(text)).faults().stream()
        .map(Object::toString)
        .toList();
  }

  @Test
  void table_isTakenInWhole() {
    assertThat(take(TABLE))
        .isEqualTo(
            new PaperAnswer(3, new BigDecimal("1192.500"), 1, 1, List.of("P-1", "P-2", "Q-1")));
    PartLine first = bench.desk.parts().part("P-1").line();
    assertThat(first.ending()).isEqualTo("jam");
    assertThat(first.hotHours()).isEqualByComparingTo("512.5");
    assertThat(first.earlierHours()).isEqualByComparingTo("512.5");
    assertThat(first.total().hotSeconds())
        .containsEntry("215-220", new BigDecimal("1440000.000"))
        .containsEntry("240-245", new BigDecimal("405000.000"));
    assertThat(bench.desk.parts().parts(PartFilter.IN_USE, NOW))
        .extracting(PartLine::id)
        .as("what ended on paper is not in use")
        .containsExactly("P-2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\uFEFF", "\r\n", ";", "\"", "order", "blank"})
  void spreadsheetsHabits_areRead(String habit) {
    String text =
        switch (habit) {
          case "\uFEFF" -> habit + TABLE;
          case "\r\n" -> TABLE.replace("\n", habit);
          case ";" -> TABLE.replace(",", habit);
          case "\"" -> TABLE.replaceAll("([^,\n]+)", "\"$1\"");
          case "blank" -> TABLE.replace("\n", "\n\n");
          default ->
              """
              Hours, Temperature, Ended, Kind, Id
              400, 215, jam, liner, P-1
              112.5, 240, jam, liner, P-1
              80, 215, still-fitted, liner, P-2
              600, 220, precaution, nozzle, Q-1
              """;
        };
    assertThat(take(text).hotHours()).isEqualByComparingTo("1192.5");
  }

  @Test
  void everyFault_isToldWithLineAndColumn_andNothingIsTakenIn() {
    assertThat(
            faults(
                """
                id,kind,ended,temperature,hours
                P-1,linr,jam,215,400
                P-2,liner,jamed,215,80
                P-3,liner,worn,2150,80
                P-4,liner,worn,215,"80,5"
                P-5,liner,worn,215,-3

                P-6,liner,worn,215,10
                P-6,nozzle,jam,215,10
                -7,liner,worn,215,10
                P-8,liner,worn,215,80,5
                """))
        .containsExactlyInAnyOrder(
            "past.csv:2:2: kind: found \"linr\"; allowed: one of liner, nozzle; did you mean"
                + " liner?",
            "past.csv:3:3: ended: found \"jamed\"; allowed: one of jam, worn, precaution,"
                + " inspection, still-fitted; did you mean jam?",
            "past.csv:4:4: temperature: found \"2150\"; allowed: a number, °C, above 0 to 600",
            "past.csv:5:5: hours: found \"80,5\"; allowed: a number, hot hours, above 0 to 100000;"
                + " write the decimal point as a point: 80.5",
            "past.csv:6:5: hours: found \"-3\"; allowed: a number, hot hours, above 0 to 100000",
            "past.csv:9:2: kind: found \"nozzle\"; allowed: liner, as for P-6 in line 8; a part is"
                + " of one kind and has one ending",
            "past.csv:9:3: ended: found \"jam\"; allowed: worn, as for P-6 in line 8; a part is of"
                + " one kind and has one ending",
            "past.csv:9:4: temperature: found \"215\"; allowed: one row a part and temperature; add"
                + " the hours of both rows up",
            "past.csv:10:1: id: found \"-7\"; allowed: 1 to 40 letters, digits, dots, dashes and"
                + " underscores, beginning with a letter or digit",
            "past.csv:11: found \"P-8,liner,worn,215,80,5\"; allowed: 5 values:"
                + " id,kind,ended,temperature,hours; this line has 6; a decimal comma splits a"
                + " number in two, write a point");
    assertThat(bench.store.parts()).isEmpty();
  }

  @Test
  void sameTableTwice_isRefusedPartByPart() {
    take(TABLE);
    assertThat(faults(TABLE))
        .hasSize(3)
        .first()
        .isEqualTo(
            "past.csv:2:1: id: found \"P-1\"; allowed: an id that no part has; P-1 is known"
                + " already: part show P-1");
  }

  @Test
  void headerThatIsMissing_isAskedFor() {
    assertThat(faults("P-1,liner,jam,215,400\n"))
        .contains(
            "past.csv:1: header: found \"p-1,liner,jam,215,400\"; allowed: a column id as well");
    assertThat(faults(""))
        .containsExactly(
            "past.csv: found \"nothing\"; allowed: a header: id,kind,ended,temperature,hours");
    assertThat(faults("id,kind,ended,temperature,hours\n"))
        .containsExactly(
            "past.csv: found \"no rows\"; allowed: a header and one row a part and temperature");
    assertThat(faults("id,kind,ended,temprature,hours\nP-1,liner,jam,215,1\n"))
        .anyMatch(fault -> fault.contains("did you mean temperature?"));
  }

  @Test
  void quotationMarkLeftOpen_isAFaultWithItsLine() {
    assertThat(faults("id,kind,ended,temperature,hours\nP-1,\"liner,jam,215,400\n"))
        .singleElement()
        .asString()
        .contains(
            "past.csv:2: found \"a quotation mark\"; allowed: values in quotation marks that are");
  }
}
