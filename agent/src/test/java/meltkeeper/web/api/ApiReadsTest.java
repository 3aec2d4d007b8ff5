package meltkeeper.web.api;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Questions over HTTP: stretches of lists, tags, and problems in words. */
final class ApiReadsTest {

  private final ServedShop shop = new ServedShop();

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void printers_areToldByName_withTheWatch() {
    shop.hear(IBIS, "plant-labels-7", "PETG", ServedShop.CLEAR);
    shop.hear(HERON, "drawer-organisers-2", "PLA", ServedShop.NARROWING);

    String body = shop.get("/api/v1/printers").body();

    assertThat(body.indexOf("\"heron\"")).isPositive().isLessThan(body.indexOf("\"ibis\""));
    assertThat(body)
        .contains(
            "\"level\":\"narrowing\"", "\"evidence\":{\"feed-ratio\":1.3}", "\"low\":4.0", "PETG");
  }

  @Test
  void list_inStretches_tellsEachOnce() {
    for (int i = 0; i < 25; i++) {
      shop.bench.add("liner");
    }
    List<String> ids = new ArrayList<>();
    Optional<String> next = Optional.of("/api/v1/parts?most=10&kind=liner");
    int answers = 0;
    while (next.isPresent()) {
      HttpResponse<String> answer = shop.get(next.get());
      Matcher id = Pattern.compile("\"id\":\"([^\"]+)\"").matcher(answer.body());
      while (id.find()) {
        ids.add(id.group(1));
      }
      next = answer.headers().firstValue("Link").map(link -> link.replaceAll("<(.*)>.*", "$1"));
      answers++;
    }

    assertThat(answers).isEqualTo(3);
    assertThat(ids).hasSize(25).doesNotHaveDuplicates();
  }

  @Test
  void unchangedAnswer_askedByItsTag_isNotSentAgain() {
    shop.bench.add("liner");
    HttpResponse<String> first = shop.get("/api/v1/parts");
    String tag = first.headers().firstValue("ETag").orElseThrow();

    HttpResponse<String> same = shop.get("/api/v1/parts", "If-None-Match", "\"x\", W/" + tag);
    shop.bench.add("liner");
    HttpResponse<String> changed = shop.get("/api/v1/parts", "If-None-Match", tag);

    assertThat(same.statusCode()).isEqualTo(304);
    assertThat(same.body()).isEmpty();
    assertThat(changed.statusCode()).isEqualTo(200);
    assertThat(changed.headers().firstValue("ETag")).isPresent().isNotEqualTo(Optional.of(tag));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/api/v1/parts?most=0 | 422 | most: found \\\"0\\\"; allowed: 1 to 1000",
        "/api/v1/parts?most=ten | 422 | most: found",
        "/api/v1/parts?after=L-999 | 422 | the id of one in the list",
        "/api/v1/parts?kind=lner | 422 | did you mean liner",
        "/api/v1/parts/L-999 | 404 | L-999",
        "/api/v1/printers/hern | 404 | did you mean heron?",
        "/api/v1/printers/heron | 404 | nothing was heard of it yet",
        "/api/v1/printers/heron/minutes?hot_end=99 | 422 | 0 to 15",
        "/api/v1/report?since=soon | 422 | a stretch like 12h",
        "/api/v1/life?kind=lner | 422 | lner",
        "/api/v1/nonsense | 404 | Nothing answers GET /api/v1/nonsense",
        "/api/v1/swaps | 405 | Nothing answers GET /api/v1/swaps",
      })
  void wrongQuestion_isAProblemInWords(String path, int status, String words) {
    HttpResponse<String> answer = shop.get(path);

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    assertThat(answer.body()).contains(words, "\"status\":" + status);
  }

  @Test
  void storeInTrouble_isUnwell() {
    assertThat(shop.get("/healthz").statusCode()).isEqualTo(200);
    shop.trouble(Optional.of("the disk is full"));

    HttpResponse<String> health = shop.get("/healthz");

    assertThat(health.statusCode()).isEqualTo(503);
    assertThat(health.body()).contains("store-trouble", "the disk is full");
  }
}
