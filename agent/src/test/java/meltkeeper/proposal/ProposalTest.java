package meltkeeper.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.ValueRule;
import org.junit.jupiter.api.Test;

class ProposalTest {

  private static final String BROKER = "brokers: { shop: { url: \"tcp://127.0.0.1:1883\" } }\n";

  private static Settings accepted(String proposal) {
    return ConfigReader.read("proposed.yaml", BROKER + proposal)
        .fold(
            settings -> settings,
            faults -> {
              throw new AssertionError(faults + "\n" + proposal);
            });
  }

  private static Messages aPrint() {
    Messages messages = new Messages();
    for (int second = 0; second < 30; second++) {
      for (String printer : new String[] {"heron", "ibis"}) {
        messages.take(
            "plant/" + printer + "/status",
            """
            {"at":"2026-03-02T08:00:%02dZ","hotend":{"now":%.1f,"set":215.0,"pwm":%d},
             "bed":{"now":60.1,"set":60,"pwm":31},"fan":0.4,
             "feed":{"asked":%.2f,"seen":%.2f},"job":{"state":"%s","name":"labels"},
             "spool":{"material":"PLA"}}
            """
                .formatted(
                    second,
                    214.5 + second % 3 * 0.2,
                    80 + second % 5,
                    second * 4.1,
                    second * 4.0,
                    second < 25 ? "RUN" : "REST"));
      }
    }
    return messages;
  }

  private static List<MessageRule> rules(Settings settings) {
    return Objects.requireNonNull(settings.mappings().get("proposed"), "proposed").rules();
  }

  private static ValueRule rule(Settings settings, String topic, Signal signal) {
    return rules(settings).stream()
        .filter(rule -> rule.topic().toString().contains(topic))
        .map(MessageRule::values)
        .flatMap(List::stream)
        .filter(value -> value.signal() == signal)
        .findFirst()
        .orElseThrow(() -> new AssertionError(signal + " is not proposed"));
  }

  @Test
  void jsonOfTwoPrinters_isProposedWhole_andAccepted() {
    Settings settings = accepted(Proposal.of(aPrint(), "shop"));

    assertThat(settings.printers()).containsOnlyKeys("heron", "ibis");
    assertThat(rules(settings)).hasSize(1);
    assertThat(rule(settings, "", Signal.HOT_END_TEMPERATURE).at()).hasToString("/hotend/now");
    assertThat(rule(settings, "", Signal.HOT_END_TARGET).at()).hasToString("/hotend/set");
    assertThat(rule(settings, "", Signal.FILAMENT_COMMANDED).at()).hasToString("/feed/asked");
    assertThat(rule(settings, "", Signal.FILAMENT_MEASURED).at()).hasToString("/feed/seen");
    assertThat(rule(settings, "", Signal.FAN).at()).hasToString("/fan");
    assertThat(rule(settings, "", Signal.MATERIAL).at()).hasToString("/spool/material");
    ValueRule state = rule(settings, "", Signal.JOB_STATE);
    assertThat(state.words()).containsEntry("RUN", JobState.PRINTING);
    assertThat(state.words()).containsEntry("REST", JobState.IDLE);
  }

  @Test
  void dutyOfTheHotEnd_isPreferredToTheBeds_andScaledByItsRange() {
    ValueRule duty = rule(accepted(Proposal.of(aPrint(), "shop")), "", Signal.HEATER_DUTY);
    assertThat(duty.at()).hasToString("/hotend/pwm");
    assertThat(duty.scale()).isEqualTo(0.01);
  }

  @Test
  void plainValuesOfOnePrinter_areProposedRuleByRule() {
    Messages messages = new Messages();
    for (int second = 0; second < 10; second++) {
      messages.take("bench/wren/hotend/now", String.format(Locale.ROOT, "%.1f", 200 + second * .1));
      messages.take("bench/wren/hotend/set", "215");
      messages.take("bench/wren/bed/now", "60.0");
      messages.take("bench/wren/job/state", second < 5 ? "paused" : "printing");
    }
    String proposal = Proposal.of(messages, "shop");
    Settings settings = accepted(proposal);

    assertThat(settings.printers()).containsOnlyKeys("wren");
    assertThat(proposal)
        .contains("topic: \"bench/{printer}/hotend/now\"\n      payload: number")
        .contains("topic: \"bench/{printer}/job/state\"\n      payload: text")
        .doesNotContain("bed");
  }

  @Test
  void messagesOfSomethingElse_areNotProposed() {
    Messages messages = new Messages();
    messages.take("house/kitchen/door", "open");
    messages.take("house/kitchen/lamp", "{\"brightness\": 12}");
    assertThat(Proposal.of(messages, "shop")).isEmpty();
  }

  @Test
  void whatAPrinterSays_neverBecomesMoreThanAValueOrAComment() {
    String hostile = "a\u0085http: x\u2028store: y\nkinds: z\u001b[31m\ud83d\ude00\ud800";
    Messages messages = new Messages();
    messages.take("plant/heron/hot\u0085end", "{\"now\": 214}");
    messages.take(
        "plant/heron/status",
        "{\"state\": \"%s\", \"temp\": 20}"
            .formatted(hostile.replace("\n", "\\n").replace("\u001b", "\\u001b")));
    String proposal = Proposal.of(messages, "shop");

    Settings settings = accepted(proposal);

    assertThat(settings.printers()).containsOnlyKeys("heron");
    assertThat(rule(settings, "status", Signal.JOB_STATE).words()).containsOnlyKeys(hostile);
    assertThat(proposal.replace("\n", "")).matches("[\\p{Print}]*");
  }

  @Test
  void brokerThatPublishesWithoutEnd_isForgottenBeyondTheBounds() {
    Messages messages = new Messages();
    for (int topic = 0; topic < 3_000; topic++) {
      StringBuilder payload = new StringBuilder("{\"now\": 1");
      for (int place = 0; place < 50; place++) {
        payload.append(", \"p").append(place).append("\": \"").append("x".repeat(200)).append('"');
      }
      messages.take("flood/" + topic, payload + "}");
    }
    assertThat(messages.topics()).hasSize(2_000);
    assertThat(messages.topics().values().stream().mapToInt(Map::size).sum()).isEqualTo(20_000);
  }

  @Test
  void anyMessages_areProposedAsSomethingAccepted() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      Messages messages = new Messages();
      String[] words = {
        "now", "set", "pwm", "state", "we\"ird", "a/b", "~", "{", "fan", "é", "", "#"
      };
      for (int i = 0; i < 40; i++) {
        String topic =
            "t/p" + random.nextInt(3) + "/" + words[random.nextInt(words.length)].replace("#", "x");
        String key = words[random.nextInt(words.length)].replace("\"", "\\\"");
        messages.take(
            topic,
            random.nextBoolean()
                ? "{\"hotend\":{\"%s\":%s}}"
                    .formatted(key, random.nextBoolean() ? random.nextInt(300) : "\"x\\ty\"")
                : words[random.nextInt(words.length)]);
      }
      String proposal = Proposal.of(messages, "shop");
      if (!proposal.isEmpty()) {
        assertThat(accepted(proposal).printers()).as("seed %d", seed).isNotEmpty();
      }
    }
  }
}
