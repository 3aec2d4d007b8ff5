package meltkeeper.source.mqtt;

import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hands the messages of one connection over to their taker, one at a time, until it is retired. The
 * caller acknowledges a message to the broker only after {@link #deliver} said yes, so whatever was
 * not taken over is sent again on the next connection.
 */
final class Delivery {

  private static final Logger LOG = LoggerFactory.getLogger(Delivery.class);

  private final String broker;
  private final MqttRequest.Taker taker;
  private final ReentrantLock handingOver = new ReentrantLock(true);
  private final Object carrierLock = new Object();
  private @Nullable Thread carrier;
  private volatile boolean retired;

  Delivery(String broker, MqttRequest.Taker taker) {
    this.broker = broker;
    this.taker = taker;
  }

  /**
   * Blocks as long as the taker does.
   *
   * @return false when the message was not taken over, and must not be acknowledged
   */
  boolean deliver(MqttRequest request) {
    handingOver.lock();
    try {
      if (!begin()) {
        return false;
      }
      taker.take(request);
      return true;
    } catch (InterruptedException e) {
      // The order of messages is kept only if none is taken over after one that was not.
      retired = true;
      return false;
    } catch (RuntimeException e) {
      LOG.error("broker {}: a message on {} was not taken over", broker, request.topic(), e);
      retired = true;
      return false;
    } finally {
      end();
      handingOver.unlock();
    }
  }

  /** True while a message waits to be taken over. */
  boolean isHandingOver() {
    return handingOver.isLocked();
  }

  /** Takes nothing more; the message that is being handed over is still awaited. */
  void retire() {
    handingOver.lock();
    try {
      retired = true;
    } finally {
      handingOver.unlock();
    }
  }

  /** Takes nothing more, and interrupts the taker if it blocks. */
  void abandon() {
    retired = true;
    synchronized (carrierLock) {
      if (carrier != null) {
        carrier.interrupt();
      }
    }
  }

  private boolean begin() {
    synchronized (carrierLock) {
      if (!retired) {
        carrier = Thread.currentThread();
      }
      return !retired;
    }
  }

  private void end() {
    synchronized (carrierLock) {
      carrier = null;
    }
  }
}
