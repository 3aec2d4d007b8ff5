package meltkeeper.web.api;

import static meltkeeper.desk.Bench.HERON;
import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import meltkeeper.desk.Bench;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Acts over HTTP. */
final class ApiWritesTest {

  private final ServedShop shop = new ServedShop();

  @AfterEach
  void close() {
    shop.close();
  }

  private List<String> parts() {
    return shop.bench.store.parts().stream().map(part -> part.id()).toList();
  }

  @Test
  void aPartsWholeLife_isToldOverTheApi() {
    ok(shop.post("/api/v1/parts", "{\"kind\":\"liner\",\"part\":\"L-1\"}"));
    ok(shop.post("/api/v1/parts/L-1/fit", "{\"printer\":\"heron\",\"at\":\"2026-03-09T08:00Z\"}"));
    ok(shop.post("/api/v1/parts/L-1/clean", "{\"restores\":0.7,\"at\":\"2026-03-09T12:00Z\"}"));
    ok(
        shop.post(
            "/api/v1/swaps", "{\"printer\":\"heron\",\"kind\":\"liner\",\"because\":\"jam\"}"));
    ok(shop.post("/api/v1/parts/L-1/blame", "{\"not_this_part\":true}"));

    assertThat(shop.get("/api/v1/parts/L-1").body()).contains("\"ending\":\"excused\"");
    ok(shop.post("/api/v1/parts/L-002/undo", "{}"));
    ok(shop.post("/api/v1/parts/L-1/undo", "{}"));
    assertThat(shop.get("/api/v1/parts/L-1").body()).contains("\"ending\":\"still-fitted\"");
  }

  private static void ok(HttpResponse<String> answer) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
  }

  @Test
  void bodyOverOneMebibyte_isRefusedInWords() {
    HttpResponse<String> answer =
        shop.post("/api/v1/parts", "{\"kind\":\"liner\"}" + " ".repeat(1 << 20));

    assertThat(answer.statusCode()).isEqualTo(413);
    assertThat(answer.headers().firstValue("Content-Type")).contains(Problem.CONTENT_TYPE);
    assertThat(answer.body()).contains("found more than 1 MiB; allowed: at most that");
    assertThat(parts()).isEmpty();
  }

  @Test
  void writeSentAgain_withItsKey_isDoneOnce() {
    String body = "{\"kind\":\"liner\"}";
    HttpResponse<String> first = shop.post("/api/v1/parts", body, "Idempotency-Key", "k1");
    HttpResponse<String> again = shop.post("/api/v1/parts", body, "Idempotency-Key", "k1");

    assertThat(again.body()).isEqualTo(first.body());
    assertThat(parts()).hasSize(1);
  }

  @Test
  void key_usedForAnotherWrite_isRefused() {
    shop.post("/api/v1/parts", "{\"kind\":\"liner\"}", "Idempotency-Key", "k1");

    HttpResponse<String> other =
        shop.post("/api/v1/parts", "{\"kind\":\"nozzle\"}", "Idempotency-Key", "k1");

    assertThat(other.statusCode()).isEqualTo(422);
    assertThat(other.body()).contains("a key that was not used for another write");
    assertThat(parts()).hasSize(1);
  }

  @Test
  void refusedWrite_canBeSentAgainWithItsKey_onceItIsMended() {
    String body = "{\"printer\":\"heron\",\"kind\":\"liner\",\"because\":\"jam\",\"part\":\"L-1\"}";
    assertThat(shop.post("/api/v1/swaps", body, "Idempotency-Key", "k1").statusCode())
        .isEqualTo(422);
    shop.post("/api/v1/parts", "{\"kind\":\"liner\",\"part\":\"L-1\"}");

    ok(shop.post("/api/v1/swaps", body, "Idempotency-Key", "k1"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/api/v1/parts | [] | one JSON object",
        "/api/v1/parts | {\"kind\":\"liner\" | one JSON object",
        "/api/v1/parts | {\"kind\":\"lner\"} | did you mean liner",
        "/api/v1/parts | {\"kind\":\"liner\",\"colour\":\"red\"} | colour",
        "/api/v1/parts/L-9/clean | {\"restores\":0.5} | L-9",
        "/api/v1/parts/L-9/fit | {\"part\":\"L-8\",\"printer\":\"heron\"} | none, or L-9 as the address says",
        "/api/v1/swaps | {\"printer\":\"heron\",\"kind\":\"liner\",\"because\":\"bored\"} | because",
        "/api/v1/risk | {\"printer\":\"heron\"} | stretches",
        "/api/v1/risk | {\"printer\":\"heron\",\"stretches\":[{\"hours\":-1,\"temperature\":9000}]} | hours",
        "/api/v1/questions/none/nothing | {} | the episode of a jam",
        "/api/v1/alerts/none/acknowledge | {} | the id of an alert",
      })
  void wrongWrite_isRefusedInWords_andChangesNothing(String path, String body, String words) {
    HttpResponse<String> answer = shop.post(path, body);

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(422);
    assertThat(answer.body()).contains(words);
    assertThat(parts()).isEmpty();
  }

  @Test
  void paper_isTakenIn_allOrNothing() {
    HttpResponse<String> wrong =
        paper("id,kind,ended,temperature,hours\nL-1,liner,jam,215,300\nL-2,lner,jam,215,300\n");
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("past.csv", "lner");
    assertThat(parts()).isEmpty();

    ok(paper("id,kind,ended,temperature,hours\nL-1,liner,jam,215,300\n"));
    assertThat(parts()).containsExactly("L-1");
  }

  private HttpResponse<String> paper(String csv) {
    return shop.send(
        shop.request("/api/v1/paper?name=past.csv", "Content-Type", "text/csv")
            .POST(BodyPublishers.ofString(csv))
            .build());
  }

  @Test
  void gcode_isReckonedLikeItsHours() {
    String id = shop.bench.add("liner");
    shop.bench.fit(id, HERON, "2026-03-09T00:00:00Z");

    HttpResponse<String> answer =
        shop.send(
            shop.request(
                    "/api/v1/risk/heron/gcode?name=box.gcode&at_most=0.05",
                    "Content-Type",
                    "text/x-gcode")
                .POST(BodyPublishers.ofString("M109 S225\nG1 X6000 E900 F60\n"))
                .build());

    ok(answer);
    assertThat(answer.body()).contains("\"longest_hours\":", "\"id\":\"" + id + "\"");
  }

  @Test
  void acknowledgement_isNoted_withWhoGaveIt() {
    Episode episode = new Episode(AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HERON), Bench.NOW);
    Alert alert = new Alert(episode, Alert.Phase.BEGAN, 0, Bench.NOW, "heron is stalled");
    shop.bench.store.outbox().post(List.of(new Posting(alert, List.of())));

    ok(shop.post("/api/v1/alerts/" + alert.id() + "/acknowledge", "{\"by\":\"Mira\"}"));

    assertThat(shop.bench.store.outbox().latest(1).get(0).acknowledged())
        .contains(new Acknowledgement(Bench.NOW, "Mira"));
  }
}
