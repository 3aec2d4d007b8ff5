package meltkeeper.cli.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JamNotesTest {

  private final List<Fault> faults = new ArrayList<>();
  private final JamNotes notes =
      new JamNotes(
          "day.jsonl.jams.csv", List.of("heron", "wren"), ZoneId.of("Europe/Berlin"), faults);

  private static long nanos(String instant) {
    return Moments.nanos(Instant.parse(instant));
  }

  @Test
  void table_ofAllColumns_isReadByTheShopsClock() {
    List<JamNote> read =
        notes.read(
            """
            printer,hot-end,began,stalled,note
            heron,1,2026-03-02 13:50,2026-03-02 14:20,"wet, I think"
            wren,,,2026-07-02T14:20:30+01:00,
            """);
    assertThat(faults).isEmpty();
    assertThat(read).hasSize(2);
    JamNote first = read.get(0);
    assertThat(first.hotEnd()).isEqualTo(new HotEnd("heron", 1));
    assertThat(first.began()).hasValue(nanos("2026-03-02T12:50:00Z"));
    assertThat(first.stalledNanos()).isEqualTo(nanos("2026-03-02T13:20:00Z"));
    assertThat(first.note()).isEqualTo("wet, I think");
    JamNote second = read.get(1);
    assertThat(second.hotEnd()).isEqualTo(HotEnd.first("wren"));
    assertThat(second.began()).isEmpty();
    assertThat(second.stalledNanos()).isEqualTo(nanos("2026-07-02T13:20:30Z"));
    assertThat(second.place()).isEqualTo("day.jsonl.jams.csv:3");
  }

  @Test
  void table_ofItsHeaderAlone_holdsNoJam() {
    assertThat(notes.read("printer,stalled\n")).isEmpty();
    assertThat(faults).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hreon,,,2026-03-02 14:20 | printer: found \"hreon\"; allowed: one of heron, wren; did you"
            + " mean heron?",
        "heron,16,,2026-03-02 14:20 | hot-end: found \"16\"; allowed: 0 to 15, or empty for the"
            + " first, 0",
        "heron,,,14:20 | stalled: found \"14:20\"; allowed: a date and time as 2026-03-02T14:20 by"
            + " the shop's clock, or 2026-03-02T14:20+01:00",
        "heron,,,2026-03-02 25:20 | stalled: found \"2026-03-02 25:20\"; allowed: a date and time"
            + " as 2026-03-02T14:20 by the shop's clock, or 2026-03-02T14:20+01:00",
        "heron,,,2026-03-29 02:30 | stalled: found \"2026-03-29 02:30\"; allowed: a time that"
            + " exists: clocks went forward over this one",
        "heron,,2026-03-02 15:00,2026-03-02 14:20 | began: found \"2026-03-02 15:00\"; allowed: a"
            + " time before it stalled, 2026-03-02 14:20; leave it empty where nobody knows"
      })
  void row_withAFault_isToldWithLineValueAndMend(String row, String told) {
    assertThat(notes.read("printer,hot-end,began,stalled\n" + row + "\n")).isEmpty();
    assertThat(faults).map(Fault::toString).containsExactly("day.jsonl.jams.csv:2: " + told);
  }

  @Test
  void table_withoutTheColumnStalled_isToldSo() {
    notes.read("printer,staled\nheron,2026-03-02 14:20\n");
    assertThat(faults)
        .map(Fault::toString)
        .containsExactly(
            "day.jsonl.jams.csv:1: header: found \"staled\"; allowed: the columns"
                + " printer,hot-end,began,stalled,note in any order; did you mean stalled?",
            "day.jsonl.jams.csv:1: header: found \"printer,staled\"; allowed: a column stalled as"
                + " well");
  }

  @Test
  void fileOfJams_liesBesideTheRecording() {
    assertThat(JamNotes.beside(Path.of("logs", "day.jsonl.gz")))
        .isEqualTo(Path.of("logs", "day.jsonl.gz.jams.csv"));
  }
}
