package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.ByteArrayEndPoint;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A client that was answered and goes on sending: heard to its end, but not for ever. */
final class LeftoverTest {

  private static final int BLOCK_BYTES = 1 << 20;

  private long nowNanos = -7;
  private final ByteArrayEndPoint client =
      new ByteArrayEndPoint() {
        @Override
        protected void execute(Runnable task) {
          task.run();
        }
      };
  private final Leftover leftover = new Leftover(client, Runnable::run, () -> nowNanos);

  @BeforeEach
  void open() {
    client.setConnection(leftover);
    leftover.onUpgradeTo(ByteBuffer.allocate(100));
    leftover.onOpen();
  }

  private void send(int bytes) {
    client.addInput(ByteBuffer.allocate(bytes));
  }

  @Test
  void answeredClient_seesTheEnd_andIsReadOn() {
    send(BLOCK_BYTES);

    assertThat(client.isOutputShutdown()).isTrue();
    assertThat(client.isOpen()).isTrue();
    assertThat(client.isFillInterested()).isTrue();
  }

  @Test
  void clientThatEnds_isLetGo() {
    send(1);
    client.addInputEOF();

    assertThat(client.isOpen()).isFalse();
  }

  @Test
  void clientThatSendsTooMuch_isCutOff() {
    long allowed = Leftover.MOST_BYTES / BLOCK_BYTES;
    for (long i = 0; i < allowed; i++) {
      send(BLOCK_BYTES);
    }
    assertThat(client.isOpen()).isTrue();

    send(1);

    assertThat(client.isOpen()).isFalse();
  }

  @Test
  void clientThatSendsForTooLong_isCutOff() {
    nowNanos += Leftover.MOST_TIME.toNanos();
    send(1);
    assertThat(client.isOpen()).isTrue();

    nowNanos++;
    send(1);

    assertThat(client.isOpen()).isFalse();
  }

  @Test
  void clientThatFallsSilent_isCutOff() {
    assertThat(client.getIdleTimeout()).isEqualTo(Leftover.MOST_SILENCE.toMillis());

    leftover.onFillInterestedFailed(new TimeoutException());

    assertThat(client.isOpen()).isFalse();
  }
}
