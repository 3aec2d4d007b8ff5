package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineSplitterTest {

  @Test
  void lines_endedByCrLfOrBoth_areToldWithoutEmptyOnes() {
    Heard heard = heard(new LineSplitter(), "ok\nwait\rstart\r\n\r\n\n  \nT:20.1\n");

    assertThat(heard.lines).containsExactly("ok", "wait", "start", "  ", "T:20.1");
  }

  @Test
  void line_notYetEnded_isNotTold() {
    LineSplitter splitter = new LineSplitter();

    assertThat(heard(splitter, "ok T:21").lines).isEmpty();
    assertThat(heard(splitter, "4.9 /215.0\n").lines).containsExactly("ok T:214.9 /215.0");
  }

  @Test
  void controlBytes_betweenLetters_areLeftOutButTabsStay() {
    assertThat(heard(new LineSplitter(), "\0o\7k\33\tT:1\177.5\n").lines)
        .containsExactly("ok\tT:1.5");
  }

  @Test
  void line_overTheLimit_isToldOnceOneByteOverIt() {
    Heard heard = heard(new LineSplitter(4), "1234\n12345\n1234567890\nok\n");

    assertThat(heard.lines).containsExactly("1234", "12345", "12345", "ok");
  }

  @Test
  void line_overThePrintersLimit_isReadAsTooLong() {
    Heard heard = heard(new LineSplitter(), "x".repeat(1024) + "\n" + "x".repeat(5000) + "\n");

    assertThat(heard.lines).hasSize(2);
    assertThat(heard.lines.get(1)).hasSize(1025);
    assertThat(reasonOf(heard.lines.get(0))).isEqualTo(Reason.UNKNOWN_LINE);
    assertThat(reasonOf(heard.lines.get(1))).isEqualTo(Reason.TOO_LONG);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void anyBytes_inAnyChunking_giveTheSameLines(long seed) {
    Random random = new Random(seed);
    byte[] noise = Noise.bytes(random, 20_000);
    Heard whole = new Heard();
    new LineSplitter(64).feed(noise, whole);

    Heard chunked = new Heard();
    LineSplitter splitter = new LineSplitter(64);
    for (int at = 0; at < noise.length; ) {
      int to = Math.min(noise.length, at + random.nextInt(40));
      splitter.feed(noise, at, to, chunked);
      at = to;
    }

    assertThat(chunked.lines).isEqualTo(whole.lines).isNotEmpty();
    assertThat(whole.lines).allMatch(line -> !line.isEmpty());
  }

  @Test
  void chunk_changedAfterwards_leavesTheLineAsItCame() {
    Heard heard = new Heard();
    byte[] chunk = bytes("ok\n");
    new LineSplitter().feed(chunk, heard);
    Arrays.fill(chunk, (byte) 'x');

    assertThat(heard.lines).containsExactly("ok");
  }

  private static Reason reasonOf(String line) {
    return ((Report.Unreadable) Report.of(Payload.of(line))).rejected().reason();
  }

  private static Heard heard(LineSplitter splitter, String text) {
    Heard heard = new Heard();
    splitter.feed(bytes(text), heard);
    return heard;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static final class Heard implements Consumer<Payload> {
    final List<String> lines = new ArrayList<>();

    @Override
    public void accept(Payload line) {
      lines.add(line.text());
    }
  }

  @Test
  void lineNumber_acrossEmptyLinesAndAllLineEnds_countsAsAnEditorDoes() {
    LineSplitter splitter = new LineSplitter();
    List<String> told = new ArrayList<>();
    for (String chunk : List.of("one\r", "\n\r\nthree\n\nfive\r\r", "seven\n")) {
      splitter.feed(
          chunk.getBytes(StandardCharsets.US_ASCII),
          line -> told.add(splitter.lineNumber() + " " + line));
    }

    assertThat(told).containsExactly("1 one", "3 three", "5 five", "7 seven");
  }
}
