package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineSplitterTest {

  @Test
  void lines_endedByCrLfOrBoth_areToldWithoutEmptyOnes() {
    Heard heard = heard(new LineSplitter(), "ok\nwait\rstart\r\n\r\n\n  \nT:20.1\n");

    assertThat(heard.lines).containsExactly("ok", "wait", "start", "  ", "T:20.1");
    assertThat(heard.rejected).isEmpty();
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
  void line_overTheLimit_isToldOnceAndSkippedToItsEnd() {
    Heard heard = heard(new LineSplitter(4), "1234\n12345\n1234567890\nok\n");

    assertThat(heard.lines).containsExactly("1234", "ok");
    assertThat(heard.rejected).containsExactly(Reason.TOO_LONG, Reason.TOO_LONG);
  }

  @Test
  void defaultLimit_is1024Bytes() {
    assertThat(heard(new LineSplitter(), "x".repeat(1024) + "\n").lines).hasSize(1);
    assertThat(heard(new LineSplitter(), "x".repeat(1025) + "\n").rejected)
        .containsExactly(Reason.TOO_LONG);
  }

  @Test
  void wire_brokenInALine_tellsItTornAndBeginsAfresh() {
    LineSplitter splitter = new LineSplitter();
    Heard heard = heard(splitter, "ok T:21");

    splitter.breakOff(heard);
    splitter.breakOff(heard);
    splitter.feed(bytes("ok\n"), heard);

    assertThat(heard.lines).containsExactly("ok");
    assertThat(heard.rejected).containsExactly(Reason.TORN_LINE);
  }

  @Test
  void wire_brokenInATooLongLine_isNotToldTwice() {
    LineSplitter splitter = new LineSplitter(4);
    Heard heard = heard(splitter, "123456");

    splitter.breakOff(heard);
    splitter.feed(bytes("ok\n"), heard);

    assertThat(heard.lines).containsExactly("ok");
    assertThat(heard.rejected).containsExactly(Reason.TOO_LONG);
  }

  @Test
  void limit_belowOne_isRefusedByName() {
    assertThatThrownBy(() -> new LineSplitter(0))
        .hasMessage("0 is not a limit for a line; allowed: 1 or more");
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
    assertThat(chunked.rejected).isEqualTo(whole.rejected).isNotEmpty();
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

  private static Heard heard(LineSplitter splitter, String text) {
    Heard heard = new Heard();
    splitter.feed(bytes(text), heard);
    return heard;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static final class Heard implements LineSplitter.Lines {
    final List<String> lines = new ArrayList<>();
    final List<Reason> rejected = new ArrayList<>();

    @Override
    public void line(Payload line) {
      lines.add(line.text());
    }

    @Override
    public void rejected(Rejected why) {
      rejected.add(why.reason());
    }
  }
}
