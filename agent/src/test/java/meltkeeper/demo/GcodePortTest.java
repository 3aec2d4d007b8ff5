package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Answers in the RepRap dialect: common practice, no source. */
class GcodePortTest {

  private final SimulatedPrinter printer = new SimulatedPrinter(PrinterSetup.usual("egret", 3, 0));

  @Test
  void port_askedForReports_answersThemAndLeavesNothing() throws Exception {
    Leaks leaks = new Leaks();
    printer.advance(Duration.ofMinutes(10));
    GcodePort port = new GcodePort("egret", printer::state);
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port.port())) {
      socket.setSoTimeout(20_000);
      OutputStream out = socket.getOutputStream();
      BufferedReader in =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
      out.write("M105\nM27\nM114\nM155 S2\nG28\n".getBytes(StandardCharsets.US_ASCII));
      assertThat(in.readLine()).matches("ok T:22\\d\\.\\d\\d /225\\.00 B:60\\.00 .*@:\\d+ B@:40");
      assertThat(in.readLine()).matches("SD printing byte \\d+/2000000");
      assertThat(in.readLine()).isEqualTo("ok");
      assertThat(in.readLine()).matches("X:.* E:[1-9]\\d+\\.\\d\\d Count .*");
      assertThat(in.readLine()).isEqualTo("ok");
      assertThat(in.readLine()).isEqualTo("ok");
      assertThat(in.readLine()).isEqualTo("echo:Unknown command: \"G28\"");
      assertThat(in.readLine()).isEqualTo("ok");
      port.tick();
      printer.advance(Duration.ofSeconds(2));
      port.tick();
      port.tick();
      out.write("M27\n".getBytes(StandardCharsets.US_ASCII));
      assertThat(in.readLine()).startsWith(" T:22");
      assertThat(in.readLine()).startsWith("SD printing byte");
    }
    port.close();
    Leaks.isFree(port.port());
    leaks.noThreadIsLeft();
  }

  @Test
  void port_afterAHangUp_servesTheNext() throws Exception {
    try (GcodePort port = new GcodePort("egret", printer::state)) {
      for (int i = 0; i < 3; i++) {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port.port())) {
          socket.setSoTimeout(20_000);
          socket.getOutputStream().write("M27\n".getBytes(StandardCharsets.US_ASCII));
          BufferedReader in =
              new BufferedReader(
                  new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
          assertThat(in.readLine()).isNotBlank();
        }
      }
    }
  }
}
