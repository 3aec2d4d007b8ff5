package meltkeeper.metrics.otlp;

import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.io.IOException;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.nio.file.Files;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Pushes the metrics from time to time on a thread of its own. A push that fails is not repeated:
 * the next one carries the same counters, grown. Trouble is logged when it begins and when it ends.
 */
public final class OtlpPush implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(OtlpPush.class);
  private static final int OK = 200;
  private static final int MULTIPLE_CHOICES = 300;

  private final OtlpSettings settings;
  private final String instance;
  private final Supplier<MetricSnapshots> metrics;
  private final long startNanos = now();
  private final int timeoutMillis;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread = new Thread(this::keepPushing, "otlp");
  private volatile Optional<String> trouble = Optional.empty();

  /**
   * Starts to push, the first time after one interval.
   *
   * @param instance tells this agent from others
   * @param metrics asked once a push
   */
  public OtlpPush(OtlpSettings settings, String instance, Supplier<MetricSnapshots> metrics) {
    this.settings = settings;
    this.instance = instance;
    this.metrics = metrics;
    this.timeoutMillis = Math.toIntExact(settings.timeout().toMillis());
    thread.setDaemon(true);
    thread.start();
  }

  private void keepPushing() {
    try {
      while (!closing.await(settings.every().toMillis(), TimeUnit.MILLISECONDS)) {
        note(push());
      }
    } catch (InterruptedException e) {
      LOG.debug("otlp: interrupted");
    }
  }

  /** Why the last push failed; empty while all is well. */
  Optional<String> trouble() {
    return trouble;
  }

  /** Why it failed; empty when it was taken. */
  private Optional<String> push() {
    try {
      int status =
          post(new OtlpMessage(instance, startNanos, now()).of(metrics.get()).toByteArray());
      return status >= OK && status < MULTIPLE_CHOICES
          ? Optional.empty()
          : Optional.of("it answered " + status);
    } catch (IOException e) {
      return Optional.of(e.toString());
    } catch (RuntimeException e) {
      LOG.error("otlp: a push failed by our own fault", e);
      return Optional.of(e.toString());
    }
  }

  /** The answer's status. A connection for each push: there is one a minute. */
  private int post(byte[] body) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) settings.url().toURL().openConnection();
    try {
      connection.setConnectTimeout(timeoutMillis);
      connection.setReadTimeout(timeoutMillis);
      connection.setInstanceFollowRedirects(false);
      connection.setRequestMethod("POST");
      connection.setDoOutput(true);
      settings.headers().forEach(connection::setRequestProperty);
      connection.setRequestProperty("Content-Type", "application/x-protobuf");
      connection.setRequestProperty("Connection", "close");
      if (settings.tokenFile().isPresent()) {
        String token = Files.readString(settings.tokenFile().get()).strip();
        connection.setRequestProperty("Authorization", "Bearer " + token);
      }
      try (OutputStream out = connection.getOutputStream()) {
        out.write(body);
      }
      return connection.getResponseCode();
    } finally {
      connection.disconnect();
    }
  }

  private void note(Optional<String> now) {
    if (now.isPresent() && trouble.isEmpty()) {
      LOG.warn("metrics cannot be pushed to {}: {}", settings.url(), now.get());
    } else if (now.isEmpty() && trouble.isPresent()) {
      LOG.info("metrics are pushed to {} again", settings.url());
    }
    trouble = now;
  }

  private static long now() {
    Instant now = Instant.now();
    return TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano();
  }

  /** Ends within the time-out of a push; one that still goes on then is left to itself. */
  @Override
  public void close() {
    closing.countDown();
    try {
      thread.join(timeoutMillis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
