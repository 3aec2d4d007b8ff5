package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Random;
import meltkeeper.protocol.IsoTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeFormatTest {

  private static final long LATEST = 9_223_372_035_999_999_999L;

  /** Source of the nanoseconds: GNU {@code date -u -d TIME +%s%N}, for lines marked by hand. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-02T08:00:00Z, 1772438400000000000",
    "2026-03-02T09:30:00+05:30, 1772424000000000000",
    "2024-02-29T23:59:59.5Z, 1709251199500000000",
    "1970-01-01T00:00:00Z, 0",
    "2262-04-11T23:47:15Z, 9223372035000000000",
    "2026-03-02t08:00:00z, 1772438400000000000", // by hand, as RFC 3339 section 5.6 allows
    "2026-03-02 08:00:00Z, 1772438400000000000", // by hand, as RFC 3339 section 5.6 allows
    "'2026-03-02T08:00:00,25Z', 1772438400250000000", // by hand, ISO 8601's comma
    "2026-03-02T08:00:00.123456789987Z, 1772438400123456789", // by hand, cut to nanoseconds
    "2026-03-02T04:00:00-0400, 1772438400000000000", // by hand
    "2026-03-02T09:00:00+01, 1772438400000000000", // by hand
    "2016-12-31T23:59:60Z, 1483228800000000000", // by hand, the leap second of that night
  })
  void iso_inItsForms_isExact(String text, long nanos) {
    assertThat(TimeFormat.ISO.nanos(text)).isEqualTo(nanos);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "now",
        "2026-03-02",
        "2026-03-02T08:00Z",
        "2026-03-02T08:00:00",
        "2026-03-02T08:00:00.Z",
        "2026-03-02T08:00:00+1",
        "2026-03-02T08:00:00+01:",
        "2026-03-02T08:00:00+01:0",
        "2026-03-02T08:00:00+24:00",
        "2026-03-02T08:00:00Zx",
        "2026-02-29T08:00:00Z",
        "2026-13-01T08:00:00Z",
        "2026-00-01T08:00:00Z",
        "2026-03-00T08:00:00Z",
        "2026-03-02T24:00:00Z",
        "2026-03-02T08:60:00Z",
        "2026-03-02T08:00:61Z",
        "26-03-02T08:00:00Z",
        "1772438400",
      })
  void iso_thatIsNoWholeTime_isNone(String text) {
    assertThat(TimeFormat.ISO.nanos(text)).isEqualTo(IsoTime.NOT_A_TIME);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1969-12-31T23:59:59Z",
        "1970-01-01T00:00:00+00:01",
        "2262-04-11T23:47:16Z",
        "9999-12-31T23:59:59Z",
        "0000-01-01T00:00:00Z",
      })
  void iso_outside1970To2262_isOutOfRange(String text) {
    assertThat(TimeFormat.ISO.nanos(text)).isEqualTo(IsoTime.OUT_OF_RANGE);
  }

  /** The digits themselves, shifted by hand. */
  @ParameterizedTest
  @CsvSource({
    "EPOCH_SECONDS, 1772438400, 1772438400000000000",
    "EPOCH_SECONDS, 1772438400.123456, 1772438400123456000",
    "EPOCH_SECONDS, 1772438400.000000001, 1772438400000000001",
    "EPOCH_SECONDS, 1772438400.9999999999, 1772438400999999999",
    "EPOCH_SECONDS, 1.772438400123456E9, 1772438400123456000",
    "EPOCH_SECONDS, 17724384e+2, 1772438400000000000",
    "EPOCH_SECONDS, 1772438400000e-3, 1772438400000000000",
    "EPOCH_SECONDS, +12.5, 12500000000",
    "EPOCH_SECONDS, .5, 500000000",
    "EPOCH_SECONDS, 5., 5000000000",
    "EPOCH_SECONDS, 0, 0",
    "EPOCH_SECONDS, -0.0, 0",
    "EPOCH_SECONDS, 0e999999999999, 0",
    "EPOCH_SECONDS, 1e-999999999999, 0",
    "EPOCH_SECONDS, 0000001772438400, 1772438400000000000",
    "EPOCH_SECONDS, 9223372036.854775807, 9223372036854775807",
    "EPOCH_MILLIS, 1772438400123, 1772438400123000000",
    "EPOCH_MILLIS, 1772438400123.456789, 1772438400123456789",
    "EPOCH_MILLIS, 1.772438400123e12, 1772438400123000000",
  })
  void epoch_inDigits_isExact(TimeFormat format, String text, long nanos) {
    assertThat(format.nanos(text)).isEqualTo(nanos);
  }

  @ParameterizedTest
  @CsvSource({
    "''",
    "-",
    ".",
    "x",
    "1.2.3",
    "1e",
    "1e+",
    "0x10",
    "NaN",
    "Infinity",
    "1 2",
    "'1,5'",
    "1_000"
  })
  void epoch_thatIsNoNumber_isNone(String text) {
    assertThat(TimeFormat.EPOCH_SECONDS.nanos(text)).isEqualTo(IsoTime.NOT_A_TIME);
  }

  @ParameterizedTest
  @CsvSource({
    "-1",
    "-0.0000000001",
    "9223372036.854775808",
    "1772438400000",
    "1e99",
    "1e999999999999"
  })
  void epoch_outside1970To2262_isOutOfRange(String text) {
    assertThat(TimeFormat.EPOCH_SECONDS.nanos(text)).isEqualTo(IsoTime.OUT_OF_RANGE);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void iso_ofAnyTime_agreesWithTheJdk(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 2_000; i++) {
      long nanos = random.nextLong(LATEST);
      ZoneOffset offset = ZoneOffset.ofTotalSeconds(60 * random.nextInt(-18 * 60, 18 * 60));
      String text =
          DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
              OffsetDateTime.ofInstant(Instant.ofEpochSecond(0, nanos), offset));
      assertThat(TimeFormat.ISO.nanos(withSeconds(text))).as(text).isEqualTo(nanos);
      assertThat(IsoTime.nanos(IsoTime.text(nanos))).isEqualTo(nanos);
      assertThat(Instant.parse(IsoTime.text(nanos))).isEqualTo(Instant.ofEpochSecond(0, nanos));
    }
  }

  private static String withSeconds(String text) {
    return text.charAt(16) == ':' ? text : text.substring(0, 16) + ":00" + text.substring(16);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {5, 6, 7, 8})
  void epoch_ofAnyDigits_agreesWithBigDecimal(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 5_000; i++) {
      BigDecimal number =
          BigDecimal.valueOf(random.nextLong() >> random.nextInt(64), random.nextInt(-6, 25));
      for (String text : new String[] {number.toString(), number.toPlainString()}) {
        assertThat(TimeFormat.EPOCH_SECONDS.nanos(text)).as(text).isEqualTo(nanos(number, 9));
        assertThat(TimeFormat.EPOCH_MILLIS.nanos(text)).as(text).isEqualTo(nanos(number, 6));
      }
    }
  }

  private static long nanos(BigDecimal number, int power) {
    BigDecimal nanos = number.movePointRight(power).setScale(0, RoundingMode.DOWN);
    boolean fits = number.signum() >= 0 && nanos.compareTo(BigDecimal.valueOf(Long.MAX_VALUE)) <= 0;
    return fits ? nanos.longValueExact() : IsoTime.OUT_OF_RANGE;
  }

  @Test
  void labels_leadBackToTheirFormats() {
    assertThat(TimeFormat.ofLabel("iso")).contains(TimeFormat.ISO);
    assertThat(TimeFormat.ofLabel("epoch-seconds")).contains(TimeFormat.EPOCH_SECONDS);
    assertThat(TimeFormat.ofLabel("epoch-millis")).contains(TimeFormat.EPOCH_MILLIS);
    assertThat(TimeFormat.ofLabel("ISO")).isEmpty();
    assertThat(PayloadForm.ofLabel("number")).contains(PayloadForm.NUMBER);
    assertThat(PayloadForm.ofLabel("xml")).isEmpty();
  }
}
