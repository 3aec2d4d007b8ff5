package meltkeeper.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.gcode.Request;
import meltkeeper.testing.Catch;
import meltkeeper.testing.ScriptedPrinter;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What holds for a printer's source over whatever wire. */
@ExtendWith(ThreadLeaks.class)
public abstract class PrinterSourceContract {

  protected static final Duration SOON = Duration.ofSeconds(30);
  private static final Origin IN = new Origin.Line("ibis", Origin.Direction.IN);
  private static final Origin OUT = new Origin.Line("ibis", Origin.Direction.OUT);

  protected final Catch inlet = new Catch();
  protected ScriptedPrinter printer;
  protected Source source;

  /** A source that is not started. */
  protected abstract Source newSource(PrinterPace pace) throws Exception;

  /** Connects the wire to the printer. */
  protected abstract void plug() throws Exception;

  /** Pulls the wire. */
  protected abstract void unplug() throws Exception;

  /** Quick, and making the connection anew on silence or not. */
  protected static PrinterPace pace(boolean reopenOnQuiet) {
    return new PrinterPace(
        Duration.ofMillis(100),
        Duration.ZERO,
        Duration.ofSeconds(2),
        reopenOnQuiet,
        Duration.ofMillis(20),
        Duration.ofMillis(200));
  }

  @BeforeEach
  void connect() throws Exception {
    printer = new ScriptedPrinter(ScriptedPrinter.POLLED);
    plug();
    source = newSource(pace(false));
  }

  @AfterEach
  void disconnect() throws Exception {
    source.close();
    assertThat(source.state()).isEqualTo(SourceState.down("closed"));
    unplug();
    printer.close();
  }

  @Test
  protected void polledPrinter_isHeardAndAsked_inOrder() {
    source.start(inlet);
    awaitAsked("M114");

    assertThat(source.state().isUp()).isTrue();
    List<Received> taken = inlet.taken();
    assertThat(taken.subList(0, 5))
        .extracting(Received::origin)
        .containsExactly(OUT, IN, IN, OUT, IN);
    assertThat(inlet.texts().subList(0, 5))
        .containsExactly(
            "M155 S1",
            "echo:Unknown command: \"M155 S1\"",
            "ok",
            "M105",
            "ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20");
    assertThat(taken)
        .extracting(received -> received.arrival().steadyNanos())
        .isSortedAccordingTo(Long::compare);
  }

  @Test
  protected void reportingPrinter_isNotAskedForTemperatures() throws Exception {
    printer.follow(ScriptedPrinter.REPORTING);
    source.start(inlet);
    awaitAsked("M155 S1");
    printer.say(" T:214.9 /215.0 @:54\n");
    awaitAsked("M27");

    awaitHeard(" T:214.9 /215.0 @:54");
    assertThat(printer.heard()).doesNotContain("M105");
  }

  @Test
  protected void nothingButRequests_isEverSent() {
    source.start(inlet);
    await().atMost(SOON).until(() -> printer.heard().stream().filter("M114"::equals).count() > 5);

    assertThat(printer.heard()).containsOnly("M155 S1", "M105", "M27", "M114");
  }

  @Test
  protected void ownersLines_areSentInOrder_betweenTheRequests() throws Exception {
    printer.follow(
        line -> line.startsWith("M2") ? List.of("ok") : ScriptedPrinter.POLLED.apply(line));
    source.start(inlet);
    awaitAsked("M105");

    assertThat(sender().send(orders("M25", "M240 S1"), SOON)).isEmpty();
    assertThat(printer.heard()).containsSubsequence("M105", "M25", "M240 S1");
    assertThat(inlet.taken())
        .filteredOn(received -> received.origin().equals(OUT))
        .extracting(received -> received.payload().text())
        .contains("M25", "M240 S1");
    awaitAskedAgain("M105");
  }

  @Test
  protected void ownersLineThatThePrinterDoesNotKnow_isToldBack() throws Exception {
    source.start(inlet);
    awaitAsked("M105");

    assertThat(sender().send(orders("M25"), SOON)).containsExactly("M25");
  }

  @Test
  protected void ownersLines_whileThePrinterIsBusy_areWithdrawn() throws Exception {
    source.start(inlet);
    awaitAsked("M105");
    printer.follow(line -> List.of("echo:busy: processing"));
    await()
        .atMost(SOON)
        .until(() -> inlet.texts().stream().anyMatch(text -> text.contains("busy")));

    assertThatThrownBy(() -> sender().send(orders("M25"), Duration.ofSeconds(1)))
        .isInstanceOf(IOException.class)
        .hasMessage("the printer took nothing for 1 s; nothing was sent");
    printer.follow(ScriptedPrinter.POLLED);
    printer.say("ok\n");
    awaitAskedAgain("M105");
    assertThat(printer.heard()).doesNotContain("M25");
  }

  @Test
  protected void ownersLines_toAPrinterThatIsAway_areRefused() throws Exception {
    assertThatThrownBy(() -> sender().send(orders("M25"), SOON))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("ibis is not heard");
  }

  private PrinterSource sender() {
    return (PrinterSource) source;
  }

  private static List<Request.Ordered> orders(String... lines) {
    return Arrays.stream(lines).map(Request.Ordered::new).toList();
  }

  @Test
  protected void pulledWire_isFoundAgain_andTheTalkBeginsAnew() throws Exception {
    source.start(inlet);
    awaitAsked("M105");
    unplug();
    await().atMost(SOON).until(() -> source.state().phase() == SourceState.Phase.DOWN);
    assertThat(source.state().reason()).contains("next try in");

    plug();
    await().atMost(SOON).until(() -> source.state().isUp());
    await()
        .atMost(SOON)
        .until(() -> printer.heard().stream().filter("M155 S1"::equals).count() == 2);
    awaitAskedAgain("M105");
  }

  @Test
  protected void lineNoise_isHandedOver_andTheTalkGoesOn() throws Exception {
    source.start(inlet);
    awaitAsked("M105");
    printer.say("\u00ff\u0000#T:2\u0007xx\r\nok T:21");
    printer.say("9.9 /220.0\n");

    awaitHeard("\ufffd#T:2xx");
    await()
        .atMost(SOON)
        .until(() -> inlet.texts().stream().anyMatch(text -> text.contains("9.9 /220.0")));
    awaitAskedAgain("M105");
  }

  @Test
  protected void lineOverTheLimit_isHandedOverCut() throws Exception {
    source.start(inlet);
    awaitAsked("M105");
    printer.say("\n" + "x".repeat(5_000) + "\n");

    awaitHeard("x".repeat(1_025));
    awaitAskedAgain("M105");
  }

  @Test
  protected void busyPrinter_isNotAskedFurther() throws Exception {
    printer.follow(line -> List.of("echo:busy: processing"));
    source.start(inlet);
    awaitAsked("M155 S1");
    for (int i = 0; i < 5; i++) {
      printer.say("echo:busy: processing\n");
    }
    await()
        .atMost(SOON)
        .until(() -> inlet.texts().stream().filter(text -> text.contains("busy")).count() == 6);
    assertThat(printer.heard()).containsExactly("M155 S1");

    printer.follow(ScriptedPrinter.POLLED);
    printer.say("ok\n");
    awaitAsked("M27");
  }

  @Test
  protected void restartedPrinter_isAskedFromTheBeginning() throws Exception {
    source.start(inlet);
    awaitAsked("M105");
    printer.say("start\n");

    await()
        .atMost(SOON)
        .until(() -> printer.heard().stream().filter("M155 S1"::equals).count() == 2);
  }

  @Test
  protected void silentPrinter_countsAsDown_untilItSpeaks() throws Exception {
    printer.follow(line -> List.of());
    source.start(inlet);
    await().atMost(SOON).until(() -> source.state().reason().contains("silent for"));
    assertThat(source.state().phase()).isEqualTo(SourceState.Phase.DOWN);
    assertThat(printer.connections()).isEqualTo(1);

    printer.say("T:20.0 /0.0\n");
    await().atMost(SOON).until(() -> source.state().isUp());
  }

  @Test
  protected void closing_whileTheInletBlocks_ends() {
    inlet.shut();
    source.start(inlet);
    await().atMost(SOON).until(inlet::isBlocking);
    source.close();

    assertThat(inlet.taken()).isEmpty();
  }

  protected void awaitAsked(String request) {
    await("asked " + request).atMost(SOON).until(() -> printer.heard().contains(request));
  }

  private void awaitHeard(String line) {
    await("heard").atMost(SOON).until(() -> inlet.texts().contains(line));
  }

  private void awaitAskedAgain(String request) {
    int before = printer.heard().size();
    await("asked again " + request)
        .atMost(SOON)
        .until(() -> printer.heard().lastIndexOf(request) >= before);
  }
}
