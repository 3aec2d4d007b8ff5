package meltkeeper.source.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The habits of the client library that its socket mends and no broker can provoke at will. */
@ExtendWith(ThreadLeaks.class)
final class BrokerSocketTest {

  @Test
  void writerThatMissedItsEnd_isWoken() throws Exception {
    CountDownLatch written = new CountDownLatch(1);
    CountDownLatch missed = new CountDownLatch(1);
    try (ServerSocket broker = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        BrokerSocket socket = new BrokerSocket(Optional.empty())) {
      socket.connect(broker.getLocalSocketAddress(), 1_000);
      Thread writer = new Thread(() -> writeAndWait(socket, written, missed));
      writer.start();
      written.await();
      assertThat(writer.isAlive()).isTrue();
      await().until(socket::isAtRest);
      assertThat(writer.isAlive()).isFalse();
    }
  }

  @Test
  void socketThatNobodyWroteTo_isAtRest() throws Exception {
    try (BrokerSocket socket = new BrokerSocket(Optional.empty())) {
      assertThat(socket.isAtRest()).isTrue();
    }
  }

  private static void writeAndWait(
      BrokerSocket socket, CountDownLatch written, CountDownLatch missed) {
    try (OutputStream out = socket.getOutputStream()) {
      out.write(new byte[] {1});
      written.countDown();
      missed.await();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
