package meltkeeper.source.mqtt;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import meltkeeper.protocol.Payload;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttActionListener;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;

/** A connection at protocol level 5. */
final class LevelFive implements Link, MqttCallback {

  private static final int QOS = 1;
  private static final int FIRST_REFUSAL = 0x80;

  private final Order order;
  private final MqttAsyncClient client;
  private final CompletableFuture<String> lost = new CompletableFuture<>();

  LevelFive(Order order) throws LinkException {
    this.order = order;
    try {
      client = new MqttAsyncClient(order.uri(), order.clientId(), new MemoryPersistence());
    } catch (MqttException | IllegalArgumentException e) {
      throw new LinkException(LinkException.explain(e));
    }
    client.setManualAcks(true);
    client.setCallback(this);
  }

  @Override
  public void open() throws LinkException, InterruptedException {
    Answer connected = new Answer();
    Answer subscribed = new Answer();
    try {
      client.connect(options(), null, connected);
      connected.await(order);
      if (!order.filters().isEmpty()) {
        client.subscribe(subscriptions(), null, subscribed, new MqttProperties());
        subscribed.await(order);
      }
    } catch (MqttException | IllegalArgumentException e) {
      throw new LinkException(LinkException.explain(e));
    }
  }

  @Override
  public void publish(String topic, byte[] payload, boolean retained, Optional<Payload> correlation)
      throws LinkException, InterruptedException {
    Answer taken = new Answer();
    MqttProperties properties = new MqttProperties();
    correlation.ifPresent(data -> properties.setCorrelationData(data.array()));
    try {
      client.publish(topic, new MqttMessage(payload, QOS, retained, properties), null, taken);
      taken.await(order);
    } catch (MqttException | IllegalArgumentException e) {
      throw new LinkException(LinkException.explain(e));
    }
  }

  @Override
  public boolean isUp() {
    return client.isConnected();
  }

  @Override
  public CompletableFuture<String> lost() {
    return lost;
  }

  @Override
  public void close() {
    Answer ended = new Answer();
    Ending.of(
        order,
        client.isConnected(),
        () -> client.disconnect(0, null, ended, 0, new MqttProperties()),
        ended,
        client::close);
  }

  private MqttConnectionOptions options() {
    MqttConnectionOptions options = new MqttConnectionOptions();
    options.setAutomaticReconnect(false);
    options.setCleanStart(order.keptFor().isZero());
    options.setSessionExpiryInterval(order.keptFor().toSeconds());
    options.setKeepAliveInterval((int) order.timing().keepAlive().toSeconds());
    options.setConnectionTimeout((int) Math.max(1, order.timing().answer().toSeconds()));
    options.setSocketFactory(order.sockets());
    options.setMaximumPacketSize((long) BoundedPackets.MOST_BYTES);
    order.credentials().username().ifPresent(options::setUserName);
    order
        .credentials()
        .password()
        .ifPresent(password -> options.setPassword(password.getBytes(StandardCharsets.UTF_8)));
    return options;
  }

  private MqttSubscription[] subscriptions() {
    return order.filters().stream()
        .map(filter -> new MqttSubscription(filter, QOS))
        .toArray(MqttSubscription[]::new);
  }

  @Override
  public void messageArrived(String topic, MqttMessage message) throws MqttException {
    if (order.delivery().deliver(request(topic, message))) {
      client.messageArrivedComplete(message.getId(), message.getQos());
    } else {
      lost.complete("a message was not taken over");
    }
  }

  private static MqttRequest request(String topic, MqttMessage message) {
    MqttProperties properties = message.getProperties();
    return new MqttRequest(
        topic,
        Payload.of(message.getPayload()),
        message.isRetained(),
        Optional.ofNullable(properties).map(MqttProperties::getResponseTopic),
        Optional.ofNullable(properties).map(MqttProperties::getCorrelationData).map(Payload::of));
  }

  @Override
  public void disconnected(MqttDisconnectResponse response) {
    MqttException problem = response.getException();
    String words = response.getReasonString();
    if (problem != null) {
      lost.complete(LinkException.explain(problem));
    } else {
      lost.complete(
          "the broker ended it, reason code "
              + response.getReturnCode()
              + (words == null ? "" : ": " + words));
    }
  }

  @Override
  public void mqttErrorOccurred(MqttException exception) {
    lost.complete(LinkException.explain(exception));
  }

  @Override
  public void deliveryComplete(IMqttToken token) {
    // The publish's own answer tells it.
  }

  @Override
  public void connectComplete(boolean reconnect, String serverUri) {
    // The connect's own answer tells it.
  }

  @Override
  public void authPacketArrived(int reasonCode, MqttProperties properties) {
    // Enhanced authentication is not asked for.
  }

  /** An answer of the broker. */
  private static final class Answer extends PendingAnswer implements MqttActionListener {

    @Override
    public void onSuccess(IMqttToken token) {
      int[] codes = token.getReasonCodes();
      if (codes != null && Arrays.stream(codes).anyMatch(code -> code >= FIRST_REFUSAL)) {
        refused("the broker refuses it, reason codes " + Arrays.toString(codes));
      } else {
        granted();
      }
    }

    @Override
    public void onFailure(IMqttToken token, Throwable problem) {
      refused(LinkException.explain(problem));
    }
  }
}
