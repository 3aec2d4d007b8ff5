package meltkeeper.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * Fails a test that leaves threads behind: those that were not there before it, and do not end
 * within a few seconds after it and its fixtures. Threads that the JDK keeps for itself do not
 * count.
 */
public final class ThreadLeaks implements BeforeEachCallback, AfterEachCallback {

  private static final Namespace OURS = Namespace.create(ThreadLeaks.class);
  private static final Set<String> OF_THE_JDK =
      Set.of("process reaper", "Common-Cleaner", "Attach Listener", "Signal Dispatcher");

  @Override
  public void beforeEach(ExtensionContext context) {
    context.getStore(OURS).put("before", living());
  }

  @Override
  public void afterEach(ExtensionContext context) {
    Set<?> before = context.getStore(OURS).get("before", Set.class);
    await("every thread of the test ends")
        .atMost(Duration.ofSeconds(15))
        .untilAsserted(
            () ->
                assertThat(
                        living().stream()
                            .filter(thread -> !before.contains(thread))
                            .map(Thread::getName))
                    .isEmpty());
  }

  private static Set<Thread> living() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> !isOfTheJdk(thread))
        .collect(Collectors.toSet());
  }

  private static boolean isOfTheJdk(Thread thread) {
    String name = thread.getName();
    return OF_THE_JDK.contains(name)
        || name.startsWith("ForkJoinPool.commonPool")
        || name.startsWith("awaitility")
        || thread.getThreadGroup() == null
        || "system".equals(thread.getThreadGroup().getName());
  }
}
