package meltkeeper.source.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lengths are written as MQTT 5.0, 1.5.5 has it: seven bits a byte, the lowest first. */
final class BoundedPacketsTest {

  private static final int PUBLISH = 0x32;
  private static final int SUBACK = 0x90;

  private static byte[] packet(int first, int length) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(first);
    int left = length;
    do {
      bytes.write(left > 127 ? left % 128 + 128 : left);
      left /= 128;
    } while (left > 0);
    for (int i = 0; i < length; i++) {
      bytes.write(i);
    }
    return bytes.toByteArray();
  }

  private static byte[] joined(byte[]... packets) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (byte[] packet : packets) {
      bytes.writeBytes(packet);
    }
    return bytes.toByteArray();
  }

  private static BoundedPackets over(byte[] bytes) {
    return new BoundedPackets(new ByteArrayInputStream(bytes));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 127, 128, 16_383, 16_384, BoundedPackets.MOST_BYTES})
  void packetsWithinTheBound_passAsTheyAre(int length) throws IOException {
    byte[] bytes = joined(packet(PUBLISH, length), packet(SUBACK, 3), packet(PUBLISH, length));

    assertThat(over(bytes).readAllBytes()).isEqualTo(bytes);
  }

  @ParameterizedTest
  @ValueSource(ints = {BoundedPackets.MOST_BYTES + 1, 3_000_000})
  void longerMessage_isCut_andTheNextOneIsWhole(int length) throws IOException {
    byte[] next = packet(PUBLISH, 10);
    byte[] cut = packet(PUBLISH, BoundedPackets.MOST_BYTES);

    byte[] read = over(joined(packet(PUBLISH, length), next)).readAllBytes();

    assertThat(read).isEqualTo(joined(cut, next));
  }

  @Test
  void anyPortions_readTheSame() throws IOException {
    Random random = new Random(20260302);
    byte[] bytes =
        joined(
            packet(PUBLISH, 500_000), packet(SUBACK, 300), packet(PUBLISH, 0), packet(PUBLISH, 9));
    byte[] whole = over(bytes).readAllBytes();
    ByteArrayOutputStream portions = new ByteArrayOutputStream();
    BoundedPackets packets = over(bytes);
    byte[] portion = new byte[40_000];
    int count = packets.read(portion, 0, 1 + random.nextInt(portion.length));
    while (count >= 0) {
      portions.write(portion, 0, count);
      count = packets.read(portion, 0, 1 + random.nextInt(portion.length));
    }

    assertThat(portions.toByteArray()).isEqualTo(whole);
  }

  @Test
  void otherPacketBeyondTheBound_andWhatIsNoMqtt_endTheConnection() {
    assertThatThrownBy(() -> over(packet(SUBACK, 500_000)).readAllBytes())
        .isInstanceOf(IOException.class)
        .hasMessage("the broker sent a packet of 500000 bytes that is no message; allowed: 400000");
    byte[] nonsense = new byte[10];
    Arrays.fill(nonsense, (byte) 0xff);
    assertThatThrownBy(() -> over(nonsense).readAllBytes())
        .isInstanceOf(IOException.class)
        .hasMessageContaining("no MQTT");
  }
}
