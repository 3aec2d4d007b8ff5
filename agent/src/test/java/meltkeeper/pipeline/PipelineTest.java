package meltkeeper.pipeline;

import static meltkeeper.pipeline.Heard.HERON;
import static meltkeeper.pipeline.Heard.nanos;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import meltkeeper.ledger.Limits;
import meltkeeper.protocol.Decoder;
import meltkeeper.store.MemoryStore;
import org.junit.jupiter.api.Test;

class PipelineTest {

  private final MemoryStore store = new MemoryStore();

  private Pipeline pipeline(Decoder decoder, meltkeeper.store.Store on) {
    return new Pipeline(
        new Intake(decoder, hotEnd -> Limits.DEFAULT, on), Duration.ofMillis(50), () -> 0);
  }

  private long storedNanos() {
    return store.tally(HERON, Long.MIN_VALUE, Long.MAX_VALUE).exposure().hotNanos();
  }

  @Test
  void closing_commitsWhatWaits() throws InterruptedException {
    try (Pipeline pipeline = pipeline(Heard.DECODER, store)) {
      for (int at = 0; at <= 5000; at++) {
        pipeline.accept(Heard.celsius(at, 220));
      }
    }

    assertThat(storedNanos()).isEqualTo(nanos(5000));
  }

  @Test
  void handOver_toABusyWriter_waitsAndLosesNothing() throws InterruptedException {
    CountDownLatch busy = new CountDownLatch(1);
    AtomicInteger handedOver = new AtomicInteger();
    Decoder slow =
        (received, outlet) -> {
          try {
            busy.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          Heard.DECODER.decode(received, outlet);
        };
    try (Pipeline pipeline = pipeline(slow, store)) {
      Thread source =
          new Thread(
              () -> {
                try {
                  for (int at = 0; at <= 10_000; at++) {
                    pipeline.accept(Heard.celsius(at, 220));
                    handedOver.incrementAndGet();
                  }
                } catch (InterruptedException e) {
                  Thread.currentThread().interrupt();
                }
              });
      source.start();
      await().until(() -> source.getState() == Thread.State.WAITING);
      assertThat(handedOver.get()).isLessThan(5000);
      busy.countDown();
      source.join();
    }

    assertThat(storedNanos()).isEqualTo(nanos(10_000));
  }

  @Test
  void storeInTrouble_isShownAndRecoveredFrom() throws InterruptedException {
    FailingStore failing = new FailingStore(store);
    try (Pipeline pipeline = pipeline(Heard.DECODER, failing)) {
      failing.fail(true);
      pipeline.accept(Heard.celsius(0, 220));
      pipeline.accept(Heard.celsius(10, 220));
      await().until(() -> pipeline.live().trouble().isPresent());
      assertThat(pipeline.live().trouble()).contains("the disk is full");

      failing.fail(false);
      await().until(() -> pipeline.live().trouble().isEmpty());
    }

    assertThat(storedNanos()).isEqualTo(nanos(10));
  }

  @Test
  void decoderWithABug_stopsNothing() throws InterruptedException {
    Decoder buggy =
        (received, outlet) -> {
          if (received.payload().text().equals("bug")) {
            throw new IllegalStateException("made for this test");
          }
          Heard.DECODER.decode(received, outlet);
        };
    try (Pipeline pipeline = pipeline(buggy, store)) {
      pipeline.accept(Heard.celsius(0, 220));
      pipeline.accept(Heard.text(5, "bug"));
      pipeline.accept(Heard.celsius(10, 220));
    }

    assertThat(storedNanos()).isEqualTo(nanos(10));
  }
}
