package meltkeeper.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import meltkeeper.config.CommandTopic;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.Desk;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import meltkeeper.desk.When;
import meltkeeper.protocol.Fault;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.mqtt.MqttPublisher;
import meltkeeper.source.mqtt.MqttRequest;
import meltkeeper.source.mqtt.MqttSource;
import meltkeeper.source.mqtt.Session;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to the shop's buttons and scanners: each command is done at the desk, logged with who
 * sent it, and answered. A retained command is left alone, for it would be done again at every
 * connect; a second copy of one with the same correlation data gets the first one's answer.
 */
final class Buttons implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Buttons.class);
  private static final int REMEMBERED = 200;
  private static final int MOST_CHARACTERS = 4_000;

  private final CommandTopic topic;
  private final Desk desk;
  private final Supplier<When> when;
  private final MqttSource source;
  private final MqttPublisher publisher;
  private final Map<String, String> answers =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
          return size() > REMEMBERED;
        }
      };

  /** Begins to listen. */
  Buttons(
      CommandTopic topic,
      BrokerSettings broker,
      Desk desk,
      Supplier<When> when,
      SteadyClock clock) {
    this.topic = topic;
    this.desk = desk;
    this.when = when;
    this.publisher = new MqttPublisher(broker, topic.timeout());
    BrokerSettings ownName =
        new BrokerSettings(
            broker.name(),
            broker.url(),
            broker.protocol(),
            broker.username(),
            broker.passwordFile(),
            broker.caFile(),
            Optional.empty());
    this.source =
        new MqttSource(
            ownName,
            new Session("meltkeeper-buttons-" + UUID.randomUUID(), java.time.Duration.ZERO),
            List.of(topic.prefix() + "/+"),
            clock);
    source.listen(this::take);
  }

  private void take(MqttRequest request) throws InterruptedException {
    String word = request.topic().substring(request.topic().lastIndexOf('/') + 1);
    if (word.equals(CommandTopic.ANSWER)) {
      return;
    }
    if (request.retained()) {
      LOG.warn("button: a retained message on {} is left alone", request.topic());
      return;
    }
    Optional<String> copy = request.correlation().map(data -> request.topic() + " " + data.text());
    String answer = copy.map(answers::get).orElseGet(() -> answer(word, request));
    copy.ifPresent(key -> answers.put(key, answer));
    try {
      publisher.publish(
          request.answerTo().orElse(topic.prefix() + "/" + CommandTopic.ANSWER),
          answer,
          false,
          request.correlation());
    } catch (IOException e) {
      LOG.warn("button: the answer to {} was not sent: {}", request.topic(), e.getMessage());
    }
  }

  private String answer(String word, MqttRequest request) {
    try {
      if (request.payload().array().length > MOST_CHARACTERS) {
        throw new RefusedException(
            List.of(
                Fault.of(
                    "",
                    request.payload().array().length + " bytes",
                    "at most " + MOST_CHARACTERS)));
      }
      ToldAct command = ToldAct.signed(word, request.payload().text());
      PartChange change = command.done(desk, when.get());
      LOG.info("button: {}, sent by {}", change.done(), command.by());
      return AnswerJson.print(new Answer(true, change.done(), List.of(), change.notes()));
    } catch (RefusedException e) {
      LOG.warn("button: {} was refused: {}", request.topic(), e.getMessage());
      return AnswerJson.print(
          new Answer(false, "", e.faults().stream().map(Fault::toString).toList(), List.of()));
    } catch (StoreException e) {
      LOG.error("button: {}", e.getMessage());
      return AnswerJson.print(
          new Answer(false, "", List.of(String.valueOf(e.getMessage())), List.of()));
    } catch (RuntimeException e) {
      LOG.error("button: a bug in Meltkeeper", e);
      return AnswerJson.print(
          new Answer(false, "", List.of("a bug in Meltkeeper: its log says more"), List.of()));
    }
  }

  /**
   * What a button hears.
   *
   * @param ok true when it was done
   * @param done in words
   * @param faults why it was not done
   * @param notes what the shop should know or do next
   */
  record Answer(boolean ok, String done, List<String> faults, List<String> notes) {}

  @Override
  public void close() {
    source.close();
    publisher.close();
  }
}
