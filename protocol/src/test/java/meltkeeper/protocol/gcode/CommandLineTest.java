package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rules with a section number: Kramer, Proctor, Messina, "The NIST RS274NGC Interpreter - Version
 * 3", NISTIR 6556, 2000. The others: RepRap dialect, common practice, no source.
 */
class CommandLineTest {

  /** Section 3.3, its own example. */
  @Test
  void blanks_anywhere_changeNothing() {
    assertThat(line("g0x +0. 12 34y 7")).isEqualTo(line("g0 x+0.1234 y7"));
    assertThat(line("g0x +0. 12 34y 7").number('X')).hasValue(0.1234);
    assertThat(line("\tG\t1 \t E 1 . 5 ").toString()).isEqualTo("G1 E1.5");
  }

  /** Section 3.3: blank lines are allowed and ignored. */
  @ParameterizedTest
  @ValueSource(strings = {"", "   ", "\t", "(words)", "; words", "%", "  % "})
  void line_withoutWords_isEmpty(String text) {
    assertThat(line(text).isEmpty()).isTrue();
  }

  /** Section 3.3: letters in either case. */
  @Test
  void letters_inEitherCase_areTheSame() {
    assertThat(line("g1x2e3")).isEqualTo(line("G1X2E3"));
  }

  /** Section 3.3: block delete, line number, then words. */
  @Test
  void line_withAllItsParts_isTakenApart() {
    CommandLine line = line("/N0120 G1 (go there) X4.5 ; and stop");

    assertThat(line.isBlockDelete()).isTrue();
    assertThat(line.lineNumber()).isEqualTo(OptionalLong.of(120));
    assertThat(line.words()).containsExactly(Word.of('G', 1), Word.of('X', 4.5));
    assertThat(line.calls('G', 1)).isTrue();
    assertThat(line.calls('G', 0)).isFalse();
    assertThat(line.has('X')).isTrue();
    assertThat(line.has('Y')).isFalse();
  }

  /** Section 3.3.1: a whole number without sign. More than five digits, and -1: common practice. */
  @Test
  void lineNumber_ofAnyLengthInUse_isRead() {
    assertThat(line("N99999").lineNumber()).hasValue(99999);
    assertThat(line("N0").lineNumber()).hasValue(0);
    assertThat(line("N 12 34567 G1").lineNumber()).hasValue(1234567);
    assertThat(line("N-1 M110").lineNumber()).hasValue(-1);
  }

  @ParameterizedTest
  @CsvSource({
    "N G1 X1, NOT_A_NUMBER",
    "N1.5 G1 X1, NOT_A_NUMBER",
    "N-2 G1 X1, OUT_OF_RANGE",
    "N1234567890 G1 X1, OUT_OF_RANGE",
    "G1 N2 X1, TORN_LINE",
  })
  void lineNumber_inAWrongForm_isRefused(String text, Reason reason) {
    assertThat(refusal(text)).isEqualTo(reason);
  }

  /** Section 3.3.2.1: the forms of a number; initial and trailing zeros change nothing. */
  @ParameterizedTest
  @CsvSource({
    "341, 341",
    "-0.8807, -0.8807",
    "+.5, 0.5",
    "1., 1",
    "-1., -1",
    "-0, 0",
    ".0, 0",
    "007, 7",
    "0007.2500, 7.25",
    "+0.1234, 0.1234",
    "123456789.123456789, 123456789.123456789",
    "0.00000000000000000000012345, 1.2345E-22",
    "12345678901234567890123, 12345678901234567890123",
  })
  void number_inAnyAllowedForm_hasItsValue(String text, double value) {
    // Seventeen significant figures are kept, so far the section.
    assertThat(line("X" + text).number('X').orElseThrow())
        .isCloseTo(value, within(Math.abs(value) * 1e-16));
  }

  /** Section 3.3.2.1: at least one digit; one sign, one point. */
  @ParameterizedTest
  @CsvSource({
    "X+, NOT_A_NUMBER",
    "X., NOT_A_NUMBER",
    "X-., NOT_A_NUMBER",
    "G, NOT_A_NUMBER",
    "M S1, NOT_A_NUMBER",
    "X1.2.3, TORN_LINE",
    "X1-2, TORN_LINE",
    "X--1, NOT_A_NUMBER",
  })
  void number_inAWrongForm_isRefused(String text, Reason reason) {
    assertThat(refusal(text)).isEqualTo(reason);
  }

  /** Section 3.3.2.1: no exponents, so that E begins a word. */
  @Test
  void letterE_behindANumber_beginsAWord() {
    assertThat(line("G1X1E5").words())
        .containsExactly(Word.of('G', 1), Word.of('X', 1), Word.of('E', 5));
  }

  /** Section 3.3.2.1: codes times ten are close to an integer, by 0.0001. */
  @Test
  void code_withOneDecimal_isACodeOfItsOwn() {
    assertThat(line("G92.1").calls('G', 92)).isFalse();
    assertThat(line("G92.00001").calls('G', 92)).isTrue();
    assertThat(line("G00001 X1").calls('G', 1)).isTrue();
    assertThat(refusal("G92.15")).isEqualTo(Reason.OUT_OF_RANGE);
    assertThat(refusal("G-1")).isEqualTo(Reason.OUT_OF_RANGE);
    assertThat(refusal("M10000")).isEqualTo(Reason.OUT_OF_RANGE);
  }

  /** Section 3.3.4: a comment ends at the first closing parenthesis, and is not nested. */
  @Test
  void comment_inParentheses_isLeftOut() {
    assertThat(line("G80 M5 (stop motion)").toString()).isEqualTo("G80 M5");
    assertThat(line("(a)(b) G1 (c; d) X1 (*57)").toString()).isEqualTo("G1 X1");
    assertThat(refusal("G1 X1 (words")).isEqualTo(Reason.TORN_LINE);
    assertThat(refusal("G1 (a (b) c) X1")).isEqualTo(Reason.UNKNOWN_LINE);
    assertThat(refusal("G1 a) X1")).isEqualTo(Reason.UNKNOWN_LINE);
  }

  @Test
  void comment_behindASemicolon_isLeftOut() {
    assertThat(line("G1 X1 ; (words E5 *1").toString()).isEqualTo("G1 X1");
  }

  /** Section 3.3.5: other letters once a line, at most four M words; 3.4: one of a modal group. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "G1 X1 X2",
        "G1 X1 E2G1 X3 E4",
        "G1 G0 X1",
        "G90 G91",
        "G20 X1 G21",
        "M3 M4 M5 M6 M7",
      })
  void line_repeatingWhatStandsOnce_isTwoLinesInOne(String text) {
    assertThat(refusal(text)).isEqualTo(Reason.TORN_LINE);
  }

  @Test
  void line_withSeveralCodesOfDifferentGroups_isOne() {
    assertThat(line("G21 G90 G1 X1 M82 M106 S255 M73").words()).hasSize(8);
  }

  /** Section 3.3.6: words may be put in another order without changing the meaning. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {21, 22, 23})
  void words_inAnyOrder_answerTheSame(long seed) {
    CommandLine line = line("G1 X1 Y-2.5 Z.3 E4 F1800");
    List<Word> shuffled = new ArrayList<>(line.words());
    Collections.shuffle(shuffled, new Random(seed));
    String text = shuffled.stream().map(Word::toString).collect(Collectors.joining());

    assertThat(Set.copyOf(line(text).words())).isEqualTo(Set.copyOf(line.words()));
    assertThat(line(text).number('Y')).hasValue(-2.5);
    assertThat(line(text).calls('G', 1)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"#3=15", "G1 X#3", "X[1+2]", "G1 X1 =2"})
  void parametersAndExpressions_areNotEvaluated(String text) {
    assertThat(refusal(text)).isEqualTo(Reason.NOT_A_NUMBER);
  }

  @ParameterizedTest
  @CsvSource({
    "HELLO, UNKNOWN_LINE",
    "% G1, UNKNOWN_LINE",
    "G1 X1 !, UNKNOWN_LINE",
    "12 X4, TORN_LINE",
    ".5 E3, TORN_LINE",
    "N1 G1 X1*, TORN_LINE",
    "N1 G1 X1*x, TORN_LINE",
    "'M862.3 P \"lon', TORN_LINE",
  })
  void line_ofNoKnownForm_isRefused(String text, Reason reason) {
    assertThat(refusal(text)).isEqualTo(reason);
  }

  @Test
  void letters_withoutNumbers_markAxes() {
    CommandLine line = line("G28 X Y");

    assertThat(line.has('X')).isTrue();
    assertThat(line.number('X')).isEmpty();
    assertThat(line).isEqualTo(line("G28XY"));
  }

  @Test
  void texts_behindTheCodesThatTakeThem_areKept() {
    assertThat(line("M117 5 Days left (of 7) ; soon").text()).isEqualTo("5 Days left (of 7)");
    assertThat(line("M23 label-12.gco").text()).isEqualTo("label-12.gco");
    assertThat(line("N3 m117 Hello*" + xor("N3 m117 Hello")).text()).isEqualTo("Hello");
    assertThat(line("M0").text()).isEmpty();
    assertThat(line("M862.3 P \"heron 1\" S1").words())
        .containsExactly(Word.of('M', 862.3), Word.mark('P'), Word.of('S', 1));
  }

  @Test
  void checksum_overACommentOfANumberedLine_coversItToo() {
    String text = "N7 G1 X1 ; words (and so on";

    assertThat(line(text + "*" + xor(text)).toString()).isEqualTo("N7 G1 X1");
    assertThat(refusal(text + "*" + (xor(text) ^ 1))).isEqualTo(Reason.BAD_CHECKSUM);
    assertThat(line("G1 X1 ; 5*3").toString()).isEqualTo("G1 X1");
  }

  /** Worked by hand: N is 78, 1 is 49, 78 xor 49 = 127. */
  @Test
  void checksum_byHand_isRight() {
    assertThat(line("N1*127").lineNumber()).hasValue(1);
    assertThat(refusal("N1*126")).isEqualTo(Reason.BAD_CHECKSUM);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"N12 G1 X10.5 E+.5", "N13 M104 S215 T1", "N14 (words) G92 E0", "M105", "N15"})
  void checksum_ofALine_isTakenAndAnyOtherRefused(String text) {
    int right = xor(text);

    for (int told = 0; told < 300; told++) {
      if (told == right) {
        assertThat(line(text + "*" + told)).isEqualTo(line(text));
        assertThat(line(text + "*" + told + " ; words")).isEqualTo(line(text));
      } else {
        assertThat(refusal(text + "*" + told)).isEqualTo(Reason.BAD_CHECKSUM);
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {31, 32, 33, 34, 35})
  void checksum_withOneByteSpoilt_isBad(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      String text = "N" + i + " G1 X" + random.nextInt(200) + " E" + random.nextInt(900) / 100.0;
      byte[] bytes = (text + "*" + xor(text)).getBytes(StandardCharsets.US_ASCII);
      bytes[random.nextInt(text.length())] ^= (byte) (1 << random.nextInt(3));

      assertThat(CommandScan.of(Payload.of(bytes)).fold(line -> "read", Rejected::toString))
          .contains("BAD_CHECKSUM");
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {41, 42, 43, 44, 45})
  void parse_afterPrint_isIdentity(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 500; i++) {
      StringBuilder text = new StringBuilder(random.nextInt(4) == 0 ? "/" : "");
      text.append(random.nextBoolean() ? "N" + random.nextInt(1_000_000) : "");
      text.append(" G").append(random.nextInt(4));
      for (char letter : "XYZEF".toCharArray()) {
        if (random.nextInt(3) > 0) {
          double scale = Math.pow(10, random.nextInt(12) - 6);
          text.append(Word.of(letter, random.nextGaussian() * scale));
        }
      }
      CommandLine line = line(text.toString());

      assertThat(line(line.toString())).isEqualTo(line);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {51, 52, 53, 54, 55})
  void word_ofAnyNumber_isReadAsWritten(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 2_000; i++) {
      Word word = Word.of('E', random.nextGaussian() * Math.pow(10, random.nextInt(30) - 15));

      assertThat(line(word.toString()).words()).containsExactly(word);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {61, 62, 63, 64, 65})
  void anyBytes_asALine_neverThrowAndPrintAsTheyRead(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 4_000; i++) {
      byte[] bytes = Noise.bytes(random, random.nextInt(60));
      if (CommandScan.of(Payload.of(bytes)) instanceof CommandLine line && line.text().isEmpty()) {
        assertThat(line(line.toString())).isEqualTo(line);
      }
    }
  }

  @Test
  void number_beyondADouble_isOutOfRange() {
    assertThat(refusal("X1" + "0".repeat(400))).isEqualTo(Reason.OUT_OF_RANGE);
  }

  @Test
  void word_thatCannotBe_isRefusedByName() {
    assertThatThrownBy(() -> new Word('x', OptionalDouble.empty()))
        .hasMessage("a word begins with A to Z, not with x");
    assertThatThrownBy(() -> Word.of('X', Double.NaN))
        .hasMessage("X is followed by NaN, not finite");
  }

  @Test
  void refusal_toAPerson_showsRuleAndLine() {
    assertThat(CommandScan.of(Payload.of("G1 X#3")).fold(line -> "", Rejected::detail))
        .isEqualTo("parameters and expressions are not evaluated: \"G1 X#3\"");
  }

  static CommandLine line(String text) {
    CommandScan scan = CommandScan.of(Payload.of(text));
    assertThat(scan).isInstanceOf(CommandLine.class);
    return (CommandLine) scan;
  }

  private static Reason refusal(String text) {
    return ((CommandScan.Refused) CommandScan.of(Payload.of(text))).rejected().reason();
  }

  /** The exclusive or, written once more, apart from the code under test. */
  static int xor(String text) {
    return text.chars().reduce(0, (sum, character) -> sum ^ character);
  }
}
