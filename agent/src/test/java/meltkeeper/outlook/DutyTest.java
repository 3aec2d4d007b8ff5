package meltkeeper.outlook;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.HOUR;
import static meltkeeper.desk.Bench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.desk.Bench;
import meltkeeper.life.Estimate;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;

class DutyTest {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final long MONDAY = at("2026-03-02T00:00:00+01:00");

  private final Bench bench = new Bench();
  private final DutyBook book = new DutyBook(bench.store, VIENNA);

  /** Four weeks: ten hours from Monday to Friday, nothing at the weekend. */
  private static Duty workingWeeks() {
    List<Duty.Day> days = new ArrayList<>();
    for (int i = 0; i < 28; i++) {
      LocalDate date = LocalDate.of(2026, 2, 2).plusDays(i);
      boolean weekend = date.getDayOfWeek().getValue() >= DayOfWeek.SATURDAY.getValue();
      days.add(new Duty.Day(date, weekend ? 0 : 10));
    }
    return new Duty(VIENNA, Exposure.of(220, 200), 28 * 24 * HOUR, days);
  }

  @Test
  void fourWeeks_perHour_isTheMean() {
    assertThat(workingWeeks().perHour().hotHours()).isCloseTo(200.0 / 28 / 24, within(1e-9));
    assertThat(workingWeeks().ofDays(7).hotHours()).isCloseTo(50, within(1e-6));
  }

  @Test
  void weekend_bringsNothing_soThatADateFallsOnAWorkday() {
    Duty duty = workingWeeks();
    // From Friday midnight, a fifth of a week's hours: the whole of Monday.
    Instant friday =
        Instant.parse("2026-03-07T00:00:00+01:00".replace("+01:00", "Z")).minusSeconds(3600);
    Instant due = duty.after(friday, 7 * 24 / 5.0).orElseThrow();
    assertThat(due.atZone(VIENNA).toLocalDate()).isEqualTo(LocalDate.of(2026, 3, 10));
    assertThat(due.atZone(VIENNA).getHour()).isZero();
  }

  @Test
  void regularDays_spreadIsNone_andIrregularOnesSpreadLessOverALongTime() {
    assertThat(workingWeeks().spreadOver(10)).isCloseTo(0, within(1e-12));
    List<Duty.Day> days = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      days.add(new Duty.Day(LocalDate.of(2026, 3, 2).plusDays(i), i % 2 == 0 ? 20 : 0));
    }
    Duty rough = new Duty(VIENNA, Exposure.of(220, 80), 8 * 24 * HOUR, days);
    // Sample standard deviation of 20, 0, ... by hand: 10 sqrt(8/7), over a mean of 10.
    double ofADay = Math.sqrt(8 / 7.0);
    assertThat(rough.spreadOver(1)).isCloseTo(ofADay * Math.sqrt(1 + 1 / 8.0), within(1e-12));
    assertThat(rough.spreadOver(100)).isCloseTo(ofADay * Math.sqrt(0.01 + 1 / 8.0), within(1e-12));
  }

  @Test
  void moreThanTenYearsAway_isNoDate() {
    assertThat(workingWeeks().after(Instant.EPOCH, 3651.0 * 24)).isEmpty();
  }

  @Test
  void hotEndThatIsNew_isWatchedFromItsFirstHeat() {
    bench.hot(HERON, MONDAY + 8 * HOUR, MONDAY + 18 * HOUR, 220);
    Duty duty = book.of(HERON, MONDAY + 32 * HOUR);
    assertThat(duty.watchedNanos()).isEqualTo(24 * HOUR);
    assertThat(duty.hot().hotHours()).isEqualTo(10);
    assertThat(duty.days()).as("no whole day yet").isEmpty();
  }

  @Test
  void oldHotEnd_isWatchedForFourWholeWeeksAndToday() {
    bench.hot(HERON, at("2025-06-01T08:00:00Z"), at("2025-06-01T18:00:00Z"), 220);
    for (int day = 1; day <= 28; day++) {
      long start = MONDAY - day * 24L * HOUR;
      bench.hot(HERON, start + 8 * HOUR, start + 18 * HOUR, 220);
    }
    bench.hot(HERON, MONDAY + 8 * HOUR, MONDAY + 12 * HOUR, 220);
    Duty duty = book.of(HERON, MONDAY + 12 * HOUR);
    assertThat(duty.hot().hotHours()).isEqualTo(284);
    assertThat(duty.watchedNanos()).isEqualTo((28L * 24 + 12) * HOUR);
    assertThat(duty.days()).hasSize(28).allMatch(day -> day.hotHours() == 10);
    bench.hot(HERON, MONDAY + 12 * HOUR, MONDAY + 14 * HOUR, 220);
    assertThat(book.of(HERON, MONDAY + 14 * HOUR).hot().hotHours()).as("read anew").isEqualTo(286);
  }

  @Test
  void hotEndThatWasNeverHot_isIdle() {
    assertThat(book.of(HERON, MONDAY).isIdle()).isTrue();
  }

  @Test
  void due_joinsWhatIsNotKnownOfAgeingAndOfDays() {
    Duty duty = workingWeeks();
    Due due = Due.of(new Estimate(240, 200, 240, 300), duty, MONDAY);
    assertThat(due.hours()).isEqualTo(240);
    assertThat(due.earliest().orElseThrow()).isBefore(due.at().orElseThrow());
    assertThat(due.latest().orElseThrow()).isAfter(due.at().orElseThrow());
    Due now = Due.of(new Estimate(0, 0, 0, 0), duty, MONDAY);
    assertThat(now.at()).contains(Instant.parse("2026-03-01T23:00:00Z"));
  }
}
