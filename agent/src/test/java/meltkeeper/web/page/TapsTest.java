package meltkeeper.web.page;

import static meltkeeper.desk.Bench.HERON;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import meltkeeper.desk.Bench;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a browser without scripts does: forms, each leading back to where it stood. */
final class TapsTest {

  private static final String SWAP =
      "printer=heron&hot_end=0&kind=liner&because=jam&at=2026-03-10T05%3A00%3A00%2B01%3A00"
          + "&back=%2Fprinters%2Fheron";

  private final ServedShop shop = new ServedShop();
  private String old = "";

  @BeforeEach
  void aLinerThatPrints() {
    shop.bench.hot(HERON, "2026-03-10T00:00:00Z", 10, 225);
    shop.hear(HERON, "plant-labels-3", "PLA", ServedShop.CLEAR);
    old = shop.bench.add("liner");
    shop.bench.fit(old, HERON, "2026-03-09T00:00:00Z");
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private String location(HttpResponse<String> answer) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(303);
    return answer.headers().firstValue("Location").orElseThrow();
  }

  private String page(String path) {
    return shop.get(path, "Accept", "text/html").body();
  }

  @Test
  void swapByTap_movesCredits_andUndoRestoresThem() {
    String there = location(shop.form("/acts/swap", SWAP + "&mark=m1"));
    String shown = page(there);

    assertThat(there).startsWith("/printers/heron?done=");
    assertThat(shown).contains(old + " was taken off", "Hot metal burns", "id=\"undo\"");
    assertThat(shop.bench.hours(old)).isCloseTo(4, within(1e-9));

    String after = page(location(shop.form("/acts/take-back", "done=m1&mark=m2&back=%2F")));
    assertThat(after).contains("taken back").doesNotContain("id=\"undo\"");
    assertThat(shop.bench.hours(old)).isCloseTo(10, within(1e-9));
  }

  @Test
  void formSentTwice_isDoneOnce() {
    String first = location(shop.form("/acts/swap", SWAP + "&mark=m1"));
    String second = location(shop.form("/acts/swap", SWAP + "&mark=m1"));

    assertThat(second).isEqualTo(first);
    assertThat(shop.bench.store.parts()).hasSize(2);
  }

  @Test
  void refusedForm_saysWhy_andLeadsBack() {
    HttpResponse<String> answer =
        shop.form(
            "/acts/swap",
            "printer=heron&kind=liner&because=jam&at=tomorrow&back=%2Fprinters%2Fheron&mark=m1",
            "Accept",
            "text/html");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("tomorrow", "a time like 2026-03-02T08:00", "href=\"/printers/heron\"");
    assertThat(shop.bench.store.parts()).hasSize(1);
  }

  @Test
  void backElsewhere_leadsToTheOverview() {
    assertThat(
            location(
                shop.form("/acts/add", "kind=liner&mark=m1&back=https%3A%2F%2Fevil.example%2F")))
        .startsWith("/?done=");
  }

  @Test
  void cleaning_isToldInPercent() {
    location(shop.form("/acts/clean", "part=" + old + "&restores=70&mark=m1&back=%2F"));

    assertThat(page("/parts/" + old)).contains("cleaned", "believed to restore 0.7");
  }

  @Test
  void jamThatWasNotThePartsFault_isExcused_andUndone() {
    location(shop.form("/acts/swap", SWAP + "&mark=m1"));
    location(shop.form("/acts/blame", "part=" + old + "&not_this_part=true&mark=m2&back=%2F"));
    assertThat(shop.bench.desk.parts().part(old).line().ending()).isEqualTo("excused");

    location(shop.form("/acts/take-back", "done=m2&mark=m3&back=%2F"));
    assertThat(shop.bench.desk.parts().part(old).line().ending()).isEqualTo("jam");
  }

  @Test
  void warning_isAcknowledged() {
    Alert alert = jam();

    location(shop.form("/acts/acknowledge", "alert=" + alert.id() + "&mark=m1&back=%2Falerts"));

    assertThat(page("/alerts")).contains("seen to by the page");
  }

  private Alert jam() {
    Episode episode =
        new Episode(
            AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HERON), Bench.at("2026-03-10T10:00:00Z"));
    Alert alert = new Alert(episode, Alert.Phase.BEGAN, 0, episode.beganNanos(), "stalled");
    shop.bench.store.outbox().post(List.of(new Posting(alert, List.of())));
    return alert;
  }

  @Test
  void questionAfterAJam_isAsked_andAnsweredByOneTap() {
    jam();
    shop.bench.hot(HERON, "2026-03-10T10:30:00Z", 1, 225);
    assertThat(page("/")).contains("What was done to heron?", "Yes, the liner was swapped");

    location(
        shop.form(
            "/acts/swap",
            "printer=heron&hot_end=0&kind=liner&because=jam&mark=m1&back=%2F"
                + "&at=2026-03-10T11%3A30%3A00%2B01%3A00"));

    assertThat(page("/")).doesNotContain("What was done to heron?");
    assertThat(shop.bench.hours(old)).isCloseTo(10, within(1e-9));
  }

  @Test
  void batchCheck_byHours_answersInWords() {
    HttpResponse<String> answer =
        shop.form("/batch", "printer=heron&hours=14&temperature=225&at_most=5");

    assertThat(answer.body()).contains("id=\"answer\"", old, "The longest batch like it under");
  }

  @Test
  void batchCheck_byFile_readsTheFile() {
    HttpResponse<String> answer =
        shop.send(
            shop.request(
                    "/batch",
                    "Content-Type",
                    "multipart/form-data; boundary=b",
                    "Sec-Fetch-Site",
                    "same-origin")
                .POST(
                    BodyPublishers.ofString(
                        String.join(
                            "\r\n",
                            "--b",
                            "Content-Disposition: form-data; name=\"printer\"",
                            "",
                            "heron",
                            "--b",
                            "Content-Disposition: form-data; name=\"gcode\"; filename=\"b.gcode\"",
                            "",
                            "M109 S225\n" + "G1 X6000 E1 F60\nG1 X0 E2\n".repeat(3),
                            "--b--",
                            "")))
                .build());

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(answer.body()).contains("id=\"answer\"", "in its 10.0 h");
  }

  @Test
  void batchCheck_ofNonsense_saysWhatIsAllowed() {
    HttpResponse<String> answer =
        shop.form("/batch", "printer=heron&hours=many&temperature=225", "Accept", "text/html");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("many", "a number, such as 14 or 7.5");
  }

  @Test
  void wholePage_staysUnderItsWeight() {
    long bytes = 0;
    String html = page("/");
    bytes += html.length();
    java.util.regex.Matcher asset =
        java.util.regex.Pattern.compile("(?:src|href)=\"(/assets/[^\"]+)\"").matcher(html);
    java.util.Set<String> seen = new java.util.HashSet<>();
    while (asset.find()) {
      if (seen.add(asset.group(1))) {
        HttpResponse<String> answer = shop.get(asset.group(1).replace("&amp;", "&"));
        assertThat(answer.statusCode()).isEqualTo(200);
        bytes += answer.body().length();
      }
    }
    assertThat(seen).hasSize(4);
    assertThat(bytes).isLessThan(150_000);
  }
}
