package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import meltkeeper.protocol.Signal;
import org.junit.jupiter.api.Test;

/** Which messages are read, by whom, and in what order they are told. */
class MappingDecoderTest {

  @Test
  void documentedMapping_aStatus_tellsEverySignalInOrder() {
    Heard heard = Heard.of(PlantExample.decoder(), "plant/heron/status", PlantExample.STATUS);

    // 2026-03-02T08:00:00Z is 1772438400 seconds after 1970: `date -u -d 2026-03-02T08:00 +%s`.
    Sample sample = Sample.timed(HotEnd.first("heron"), 1_772_438_400_250_000_000L, Heard.ARRIVED);
    assertThat(heard.rejected).isEmpty();
    assertThat(heard.readings)
        .containsExactly(
            new Reading.JobStatus(sample, JobState.PRINTING),
            new Reading.Job(sample, "drawer-organiser-4"),
            new Reading.Material(sample, "PLA"),
            new Reading.FilamentCommanded(sample, 1234.5),
            new Reading.FilamentMeasured(sample, 1230.25),
            new Reading.HeaterDuty(sample, 54 * 0.0078740157),
            new Reading.HotEndTarget(sample, 215.0),
            new Reading.HotEndTemperature(sample, 214.9));
  }

  @Test
  void documentedMapping_aPlainValue_isTimedByItsArrival() {
    Heard heard = Heard.of(PlantExample.decoder(), "plant/egret/hotend/now", "214.9\n");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.HotEndTemperature(
                Sample.arrived(HotEnd.first("egret"), Heard.ARRIVED), 214.9));
  }

  @Test
  void readingsOfOneMessage_shareOneSample() {
    Heard heard = Heard.of(PlantExample.decoder(), "plant/heron/status", PlantExample.STATUS);

    Sample first = heard.readings.get(0).sample();
    assertThat(heard.readings).allSatisfy(r -> assertThat(r.sample()).isSameAs(first));
  }

  @Test
  void subscriptions_putPlusForThePrinter() {
    assertThat(PlantExample.decoder().subscriptions())
        .containsExactly("plant/+/status", "plant/+/hotend/now");
  }

  @Test
  void severalHotEnds_areToldSignalBySignalAndEachWithItsSample() {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.onHotEnd(1, Signal.HOT_END_TEMPERATURE, "/1/now"),
            Heard.onHotEnd(0, Signal.HOT_END_TEMPERATURE, "/0/now"),
            Heard.onHotEnd(1, Signal.HOT_END_TARGET, "/1/set"));

    Heard heard =
        Heard.of(decoder, "plant/heron/status", "[{\"now\":200},{\"now\":180,\"set\":190}]");

    Sample left = Sample.arrived(new HotEnd("heron", 0), Heard.ARRIVED);
    Sample right = Sample.arrived(new HotEnd("heron", 1), Heard.ARRIVED);
    assertThat(heard.readings)
        .containsExactly(
            new Reading.HotEndTarget(right, 190),
            new Reading.HotEndTemperature(left, 200),
            new Reading.HotEndTemperature(right, 180));
  }

  @Test
  void retainedMessage_marksEverySample() {
    Heard heard = new Heard();
    Received news = Heard.message("plant/heron/status", Payload.of(PlantExample.STATUS).array());
    PlantExample.decoder()
        .decode(new Received(news.origin(), news.payload(), news.arrival(), true), heard);
    PlantExample.decoder()
        .decode(
            new Received(
                new Origin.Topic("shop", "plant/egret/hotend/now"),
                Payload.of("20"),
                Arrival.at(1),
                true),
            heard);

    assertThat(heard.readings).hasSize(9).allMatch(r -> r.sample().retained());
  }

  @Test
  void arrival_onTwoClocks_countsFromTheSteadyOne() {
    Heard heard = new Heard();
    PlantExample.decoder()
        .decode(
            Received.fresh(
                new Origin.Topic("shop", "plant/egret/hotend/now"),
                Payload.of("20"),
                new Arrival(5, 99)),
            heard);

    assertThat(heard.readings.get(0).sample()).isEqualTo(Sample.arrived(HotEnd.first("egret"), 5));
  }

  @Test
  void printerNotListed_isToldOnceWithTopicAndNames() {
    MessageRule status = PlantExample.STATUS_JSON.rules().get(0);
    MappingDecoder decoder =
        new MappingDecoder(
            List.of(
                new Route(new Mapping("one", List.of(status, status)), Set.of("heron")),
                new Route(new Mapping("two", List.of(status)), Set.of("ibis"))));

    Heard heard = Heard.of(decoder, "plant/finch/status", PlantExample.STATUS);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.reasons()).containsExactly(Reason.UNKNOWN_PRINTER);
    assertThat(heard.rejected.get(0).detail())
        .isEqualTo(
            "topic plant/finch/status on broker shop: printer: found \"finch\"; allowed: heron,"
                + " ibis; list it under printers, or leave its topic out");
  }

  @Test
  void printerListedForOneOfTwoMappings_isReadByThatOneAlone() {
    MessageRule status = PlantExample.STATUS_JSON.rules().get(0);
    MappingDecoder decoder =
        new MappingDecoder(
            List.of(
                new Route(new Mapping("one", List.of(status)), Set.of("heron")),
                new Route(new Mapping("two", List.of(status)), Set.of("ibis"))));

    Heard heard = Heard.of(decoder, "plant/ibis/status", PlantExample.STATUS);

    assertThat(heard.readings).hasSize(8);
    assertThat(heard.rejected).isEmpty();
  }

  @Test
  void topicThatNoRuleMatches_isUnknownEachTime() {
    MappingDecoder decoder = PlantExample.decoder();

    for (int i = 0; i < 2; i++) {
      Heard heard = Heard.of(decoder, "plant/heron/lid", "open");
      assertThat(heard.reasons()).containsExactly(Reason.UNKNOWN_LINE);
      assertThat(heard.rejected.get(0).detail())
          .contains("plant/heron/lid", "plant/{printer}/status");
    }
  }

  @Test
  void lineOfAPrinter_isNoBrokersMessage() {
    Heard heard = new Heard();
    PlantExample.decoder()
        .decode(
            Received.fresh(
                new Origin.Line("heron", Origin.Direction.IN), Payload.of("ok"), Arrival.at(0)),
            heard);

    assertThat(heard.reasons()).containsExactly(Reason.UNKNOWN_LINE);
  }

  @Test
  void topicWithoutPrinter_readsTheOnlyPrinterOfTheMapping() {
    MappingDecoder decoder =
        Heard.decoder(
            new MessageRule(
                TopicPattern.of("bench/temperature"),
                PayloadForm.NUMBER,
                Optional.empty(),
                List.of(Heard.plain(Signal.HOT_END_TEMPERATURE, ""))));

    assertThat(Heard.of(decoder, "bench/temperature", "20").readings)
        .extracting(r -> r.sample().hotEnd().printer())
        .containsExactly("heron");
  }

  @Test
  void topicWithoutPrinter_forSeveralPrinters_isRefusedAtOnce() {
    Mapping mapping =
        new Mapping(
            "bench",
            List.of(
                new MessageRule(
                    TopicPattern.of("bench/+"),
                    PayloadForm.NUMBER,
                    Optional.empty(),
                    List.of(Heard.plain(Signal.HOT_END_TEMPERATURE, "")))));

    assertThatThrownBy(() -> new Route(mapping, Set.of("heron", "ibis")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "mappings.bench.topic: found \"bench/+\"; allowed: a topic with {printer}, for 2"
                + " printers use the mapping; put {printer} where the printer's name stands");
    assertThat(Route.fault(mapping, Set.of())).isPresent();
    assertThat(Route.fault(mapping, Set.of("heron"))).isEmpty();
  }

  @Test
  void severalRulesOnOneTopic_allApplyAndAreToldInOrder() {
    MessageRule temperature =
        new MessageRule(
            TopicPattern.of("plant/{printer}/#"),
            PayloadForm.JSON,
            Optional.empty(),
            List.of(Heard.plain(Signal.HOT_END_TEMPERATURE, "/t")));
    MessageRule job =
        new MessageRule(
            TopicPattern.of("plant/{printer}/status"),
            PayloadForm.JSON,
            Optional.empty(),
            List.of(Heard.plain(Signal.JOB, "/j")));

    Heard heard =
        Heard.of(
            Heard.decoder(temperature, job), "plant/heron/status", "{\"t\":20,\"j\":\"labels\"}");

    Sample sample = Sample.arrived(HotEnd.first("heron"), Heard.ARRIVED);
    assertThat(heard.readings)
        .containsExactly(
            new Reading.Job(sample, "labels"), new Reading.HotEndTemperature(sample, 20));
  }

  @Test
  void rulesWithDifferentTimes_keepEachItsOwn() {
    ValueRule now = Heard.plain(Signal.HOT_END_TEMPERATURE, "/t");
    TopicPattern topic = TopicPattern.of("plant/{printer}/status");
    MappingDecoder decoder =
        Heard.decoder(
            new MessageRule(topic, PayloadForm.JSON, Optional.empty(), List.of(now)),
            new MessageRule(
                topic,
                PayloadForm.JSON,
                Heard.time("/at", TimeFormat.EPOCH_SECONDS),
                List.of(Heard.plain(Signal.HOT_END_TARGET, "/s"))));

    Heard heard = Heard.of(decoder, "plant/heron/status", "{\"t\":20,\"s\":0,\"at\":1772438400.5}");

    assertThat(heard.readings)
        .extracting(r -> r.sample().atNanos())
        .containsExactly(
            Heard.ARRIVED,
            Instant.parse("2026-03-02T08:00:00Z").getEpochSecond() * 1_000_000_000L + 500_000_000L);
  }

  @Test
  void moreTopicsThanAreKept_areStillRead() {
    MappingDecoder decoder =
        Heard.decoder(
            new MessageRule(
                TopicPattern.of("plant/{printer}/+"),
                PayloadForm.NUMBER,
                Optional.empty(),
                List.of(Heard.plain(Signal.HOT_END_TEMPERATURE, ""))));

    for (int round = 0; round < 2; round++) {
      for (int i = 0; i < 5_000; i++) {
        assertThat(Heard.of(decoder, "plant/heron/" + i, "20").readings).hasSize(1);
      }
    }
  }
}
