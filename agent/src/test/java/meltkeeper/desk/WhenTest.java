package meltkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneId;
import meltkeeper.part.Moments;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Vienna is UTC+1 in winter, UTC+2 from 2026-03-29 01:00 UTC to 2026-10-25 01:00 UTC (tzdata). */
class WhenTest {

  private final When when = new When(ZoneId.of("Europe/Vienna"), Bench.at("2026-03-10T12:00:00Z"));

  @ParameterizedTest
  @CsvSource({
    "2026-03-02T08:00, 2026-03-02T07:00:00Z",
    "2026-03-02 08:00, 2026-03-02T07:00:00Z",
    "2026-03-02T08:00:30, 2026-03-02T07:00:30Z",
    "2026-03-02t08:00z, 2026-03-02T08:00:00Z",
    "2026-03-02T08:00-05:00, 2026-03-02T13:00:00Z",
    "08:15, 2026-03-10T07:15:00Z",
    "8:15, 2026-03-10T07:15:00Z",
    "today 08:15, 2026-03-10T07:15:00Z",
    "Yesterday 16:30, 2026-03-09T15:30:00Z",
    "now, 2026-03-10T12:00:00Z",
    "2026-07-01T12:00, 2026-07-01T10:00:00Z",
  })
  void timeAsToldByAPerson_isReadInTheShopsZone(String told, String instant) {
    assertThat(Moments.instant(when.at("at", told))).hasToString(instant);
  }

  @ParameterizedTest
  @CsvSource({
    "12h, 2026-03-10T00:00:00Z",
    "30d, 2026-02-08T12:00:00Z",
    "2w, 2026-02-24T12:00:00Z",
    "2026-03-01, 2026-02-28T23:00:00Z",
    "yesterday 16:30, 2026-03-09T15:30:00Z",
  })
  void stretch_isCountedBackFromNow(String told, String instant) {
    assertThat(Moments.instant(when.since("since", told))).hasToString(instant);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "soon", "2026-02-30T08:00", "25:00", "0026-03-02T08:00", "12 March", "-3d"})
  void whatIsNoTime_isRefusedWithExamples(String told) {
    assertThatThrownBy(() -> when.at("at", told))
        .isInstanceOf(RefusedException.class)
        .hasMessageStartingWith(
            "at: found \"" + told + "\"; allowed: a time like 2026-03-02T08:00");
    assertThatThrownBy(() -> when.since("since", told))
        .hasMessageContaining("allowed: a stretch like 12h, 30d or 8w");
  }

  @ParameterizedTest
  @CsvSource({"2026-03-29T02:30, went forward", "2026-10-25T02:30, 2026-10-25T02:30+01:00"})
  void timeThatTheClockSkipsOrRepeats_isRefused(String told, String words) {
    assertThatThrownBy(() -> when.at("at", told)).hasMessageContaining(words);
  }
}
