package meltkeeper.alert.route;

import static meltkeeper.alert.Calls.message;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import meltkeeper.store.AlertTopic;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

@ExtendWith(ThreadLeaks.class)
final class CommandRouteTest {

  @TempDir private Path folder;

  private Route route(String script) throws IOException {
    Path program = folder.resolve("call.sh");
    Files.writeString(program, "#!/bin/sh\n" + script + "\n");
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    return new CommandRoute(new RouteSettings.Command(program), Duration.ofSeconds(2));
  }

  private static UndeliveredException failure(Route route) {
    return catchThrowableOfType(
        UndeliveredException.class, () -> route.deliver(message(AlertTopic.TOO_HOT)));
  }

  @Test
  void program_getsTheAlertAsJson() throws Exception {
    Message message = message(AlertTopic.TOO_HOT);
    route("cat > " + folder.resolve("got")).deliver(message);

    assertThat(folder.resolve("got")).hasContent(AlertJson.of(message).toString());
  }

  @Test
  void programThatFails_hasNotTakenIt() throws Exception {
    assertThat(failure(route("exit 3"))).hasMessage("it ended with exit code 3");
  }

  @Test
  void programThatHangs_isEnded_withItsChildren() throws Exception {
    Path pid = folder.resolve("pid");
    assertThat(failure(route("sleep 1000 & echo $! > " + pid + "; wait")))
        .hasMessage("it did not end within 2000 ms");
    long child = Long.parseLong(Files.readString(pid).strip());
    await("a killed process has no command any more, even before it is buried")
        .until(() -> ProcessHandle.of(child).flatMap(p -> p.info().command()).isEmpty());
  }

  @Test
  void programThatIsGone_isNamed() {
    Route route =
        new CommandRoute(new RouteSettings.Command(folder.resolve("gone")), Duration.ofSeconds(2));
    assertThat(failure(route)).hasMessageContaining("No such file");
  }
}
