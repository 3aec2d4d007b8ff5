package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds for any bytes and any order. */
class MappingPropertiesTest {

  private static final String TOPIC = "plant/heron/status";
  private static final byte[] STATUS = PlantExample.STATUS.getBytes(StandardCharsets.UTF_8);

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void noise_neverThrowsAndATornMessageTellsNothing(long seed) {
    Random random = new Random(seed);
    MappingDecoder decoder = PlantExample.decoder();
    for (int i = 0; i < 5_000; i++) {
      byte[] payload = random.nextInt(4) == 0 ? new byte[random.nextInt(64)] : STATUS.clone();
      if (payload.length != STATUS.length) {
        random.nextBytes(payload);
      }
      for (int hits = random.nextInt(4); hits > 0 && payload.length > 0; hits--) {
        payload[random.nextInt(payload.length)] = (byte) random.nextInt(256);
      }
      String topic = random.nextBoolean() ? TOPIC : "plant/egret/hotend/now";

      Heard heard = Heard.of(decoder, topic, payload);

      if (heard.reasons().contains(Reason.TORN_LINE)) {
        assertThat(heard.readings).isEmpty();
        assertThat(heard.rejected).hasSize(1);
      }
      assertThat(heard.rejected).allSatisfy(r -> assertThat(r.detail()).doesNotContain("\n"));
    }
  }

  @Test
  void everyPrefixOfAMessage_isTorn() {
    MappingDecoder decoder = PlantExample.decoder();
    for (int length = 0; length < STATUS.length; length++) {
      Heard heard = Heard.of(decoder, TOPIC, Arrays.copyOf(STATUS, length));
      assertThat(heard.readings).as("%d bytes", length).isEmpty();
      assertThat(heard.reasons()).containsExactly(Reason.TORN_LINE);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {5, 6, 7, 8})
  void fields_inAnyOrder_tellTheSame(long seed) {
    Random random = new Random(seed);
    MappingDecoder decoder = PlantExample.decoder();
    List<Reading> expected = Heard.of(decoder, TOPIC, PlantExample.STATUS).readings;
    for (int i = 0; i < 200; i++) {
      String status =
          object(
              random,
              "\"at\":\"2026-03-02T08:00:00.250Z\"",
              "\"hotend\":" + object(random, "\"now\":214.9", "\"set\":215.0", "\"pwm\":54"),
              "\"feed\":" + object(random, "\"asked\":1234.5", "\"seen\":1230.25"),
              "\"job\":" + object(random, "\"state\":\"RUN\"", "\"name\":\"drawer-organiser-4\""),
              "\"spool\":{\"material\":\"PLA\"}",
              "\"other\":[{\"hotend\":{\"now\":1}}]");

      assertThat(Heard.of(decoder, TOPIC, status).readings).isEqualTo(expected);
    }
  }

  private static String object(Random random, String... members) {
    List<String> shuffled = new ArrayList<>(List.of(members));
    Collections.shuffle(shuffled, random);
    return "{" + String.join(", ", shuffled) + "}";
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {9, 10})
  void oneMessage_leavesNothingForTheNext(long seed) {
    Random random = new Random(seed);
    MappingDecoder used = PlantExample.decoder();
    for (int i = 0; i < 500; i++) {
      byte[] payload = Arrays.copyOf(STATUS, random.nextInt(STATUS.length + 1));
      Heard.of(used, TOPIC, payload);
      String next = random.nextBoolean() ? "{}" : "{\"hotend\":{\"now\":20}}";

      Heard after = Heard.of(used, TOPIC, next);

      assertThat(after.readings).isEmpty();
      assertThat(after.reasons())
          .isEqualTo(Heard.of(PlantExample.decoder(), TOPIC, next).reasons());
    }
  }
}
