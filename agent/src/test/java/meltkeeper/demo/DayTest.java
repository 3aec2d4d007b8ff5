package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.recording.RecordingLine;
import org.junit.jupiter.api.Test;

class DayTest {

  @Test
  void day_writtenAsARecording_readsBackAsItWas() {
    List<Received> told = new ArrayList<>();
    new Day(PrinterSetup.usual("heron", 1, 0), Telling.PLAIN_VALUES, Duration.ofSeconds(2))
        .publish(Duration.ofMinutes(5), message -> told.add(message.receivedFrom("shop")));
    List<Received> read = new ArrayList<>();
    for (Received received : told) {
      RecordingLine.parse(
          RecordingLine.print(received),
          read::add,
          rejected -> assertThat(rejected.detail()).isEmpty());
    }
    assertThat(read).isEqualTo(told).hasSize(5 * 30 * 6);
  }
}
