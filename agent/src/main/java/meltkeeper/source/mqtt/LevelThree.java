package meltkeeper.source.mqtt;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import meltkeeper.protocol.Payload;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A connection at protocol level 3.1.1. */
final class LevelThree implements Link, MqttCallback {

  private static final int QOS = 1;
  private static final int REFUSED = 0x80;

  private final Order order;
  private final MqttAsyncClient client;
  private final CompletableFuture<String> lost = new CompletableFuture<>();

  LevelThree(Order order) throws LinkException {
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
        int[] qos = new int[order.filters().size()];
        Arrays.fill(qos, QOS);
        client.subscribe(order.filters().toArray(String[]::new), qos, null, subscribed);
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
    try {
      client.publish(topic, payload, QOS, retained, null, taken);
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
        order, client.isConnected(), () -> client.disconnect(0, null, ended), ended, client::close);
  }

  private MqttConnectOptions options() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setAutomaticReconnect(false);
    options.setCleanSession(order.keptFor().isZero());
    options.setKeepAliveInterval((int) order.timing().keepAlive().toSeconds());
    options.setConnectionTimeout((int) Math.max(1, order.timing().answer().toSeconds()));
    options.setSocketFactory(order.sockets());
    order.credentials().username().ifPresent(options::setUserName);
    order
        .credentials()
        .password()
        .ifPresent(password -> options.setPassword(password.toCharArray()));
    return options;
  }

  @Override
  public void messageArrived(String topic, MqttMessage message) throws MqttException {
    if (order
        .delivery()
        .deliver(MqttRequest.plain(topic, message.getPayload(), message.isRetained()))) {
      client.messageArrivedComplete(message.getId(), message.getQos());
    } else {
      lost.complete("a message was not taken over");
    }
  }

  @Override
  public void connectionLost(Throwable cause) {
    lost.complete(LinkException.explain(cause));
  }

  @Override
  public void deliveryComplete(IMqttDeliveryToken token) {
    // The publish's own answer tells it.
  }

  /** An answer of the broker. */
  private static final class Answer extends PendingAnswer implements IMqttActionListener {

    @Override
    public void onSuccess(IMqttToken token) {
      int[] granted = token.getGrantedQos();
      if (granted != null && Arrays.stream(granted).anyMatch(qos -> qos >= REFUSED)) {
        refused("the broker refuses a subscription");
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
