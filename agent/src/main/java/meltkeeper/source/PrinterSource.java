package meltkeeper.source;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.gcode.Report;
import meltkeeper.protocol.gcode.Request;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One printer that prints from its own storage, listened to over a wire. It sends the printer
 * nothing but a {@link Request}; each line that comes, and each request sent, is handed over. Lines
 * of the owner's own are sent when somebody calls {@link #send}.
 *
 * <p>A wire that breaks is opened again after a growing pause, for ever. While the inlet blocks,
 * the wire is not read: what comes meanwhile waits in the computer's buffers, and is lost when
 * these are full.
 */
public final class PrinterSource implements Source {

  private static final Logger LOG = LoggerFactory.getLogger(PrinterSource.class);
  private static final int BUFFER_BYTES = 4096;

  /** Short enough to see a closing, long enough to cost nothing. */
  private static final Duration LOOK_UP = Duration.ofMillis(200);

  private final String printer;
  private final WireOpener opener;
  private final PrinterPace pace;
  private final SteadyClock clock;
  private final Retries retries;
  private final Object lifecycle = new Object();
  private @Nullable Thread thread;
  private final Queue<Order> orders = new ConcurrentLinkedQueue<>();
  private volatile boolean closed;
  private volatile SourceState state = SourceState.down("not started");

  public PrinterSource(String printer, WireOpener opener, PrinterPace pace, SteadyClock clock) {
    this.printer = printer;
    this.opener = opener;
    this.pace = pace;
    this.clock = clock;
    this.retries = new Retries(printer, pace.firstPause(), pace.longestPause());
  }

  @Override
  public String name() {
    return printer;
  }

  @Override
  public SourceState state() {
    return state;
  }

  @Override
  public void start(Inlet inlet) {
    synchronized (lifecycle) {
      if (thread != null || closed) {
        throw new IllegalStateException("printer " + printer + " was started before");
      }
      thread = new Thread(() -> keepListening(inlet), "printer " + printer);
      thread.start();
    }
  }

  /**
   * Sends lines of the owner's own, in order, each once the printer has taken the one before.
   *
   * @param patience for a printer that is at work on something else
   * @return the lines that the printer said it does not know
   * @throws IOException when not all were sent: the printer is away, took nothing, or broke off
   */
  public List<String> send(List<Request.Ordered> lines, Duration patience)
      throws IOException, InterruptedException {
    if (!state.isUp()) {
      throw new IOException(printer + " is not heard: " + state.reason());
    }
    Order order = new Order(lines);
    orders.add(order);
    return order.await(patience);
  }

  @Override
  public void close() {
    Thread running;
    synchronized (lifecycle) {
      closed = true;
      running = thread;
    }
    if (running != null) {
      running.interrupt();
      try {
        running.join();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    state = SourceState.down("closed");
  }

  private void keepListening(Inlet inlet) {
    while (!closed) {
      try {
        openAndListen(inlet);
      } catch (IOException e) {
        pause(e.getMessage() == null ? e.toString() : e.getMessage());
      } catch (InterruptedException e) {
        LOG.debug("{}: closed", printer);
      } catch (RuntimeException e) {
        LOG.error("{}: a bug of ours, or of a library", printer, e);
        pause("bug: " + e);
      }
    }
  }

  private void openAndListen(Inlet inlet) throws IOException, InterruptedException {
    state = SourceState.connecting("to " + opener.place());
    try (Wire wire = opener.open()) {
      state = SourceState.connecting(opener.place() + " is open; nothing heard yet");
      new Listening(wire, inlet).run();
    }
  }

  private void pause(String reason) {
    if (closed) {
      return;
    }
    state = retries.failed(reason);
    try {
      retries.pause();
    } catch (InterruptedException e) {
      LOG.debug("{}: closed while waiting", printer);
    }
  }

  /** One connection from its opening to its end. */
  private final class Listening {

    private final Wire wire;
    private final Inlet inlet;
    private final LineSplitter splitter = new LineSplitter();
    private final Conversation conversation =
        new Conversation(pace.every(), pace.settle(), System.nanoTime());
    private final List<Payload> lines = new ArrayList<>();
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private Optional<Order> order = Optional.empty();

    Listening(Wire wire, Inlet inlet) {
      this.wire = wire;
      this.inlet = inlet;
    }

    void run() throws IOException, InterruptedException {
      try {
        while (!closed) {
          takeOrder();
          ask();
          listen();
          noticeSilence();
        }
      } finally {
        order.ifPresent(broken -> broken.broke("the connection ended before all lines were sent"));
      }
    }

    private void takeOrder() {
      boolean isBusy = order.map(sending -> !sending.isDone()).orElse(false);
      if (!isBusy && conversation.isFree(System.nanoTime())) {
        order = Optional.ofNullable(orders.poll()).filter(Order::begin);
        order.ifPresent(begun -> conversation.order(begun.lines()));
      }
    }

    private void ask() throws IOException, InterruptedException {
      Optional<Request> request = conversation.due(System.nanoTime());
      if (request.isPresent()) {
        wire.write(request.get().bytes());
        if (request.get() instanceof Request.Ordered) {
          LOG.warn("{}: sent {}, as the owner wants", printer, request.get().text());
          order.ifPresent(Order::sent);
        }
        handOver(Origin.Direction.OUT, Payload.of(request.get().text()));
      }
    }

    private void listen() throws IOException, InterruptedException {
      Duration idle = conversation.idle(System.nanoTime());
      int count = wire.read(buffer, idle.compareTo(LOOK_UP) < 0 ? idle : LOOK_UP);
      if (count == 0) {
        return;
      }
      splitter.feed(buffer, 0, count, lines::add);
      for (Payload line : lines) {
        Report report = Report.of(line);
        conversation.hear(report, System.nanoTime());
        order.ifPresent(sending -> sending.hear(report));
        handOver(Origin.Direction.IN, line);
      }
      if (!lines.isEmpty() && !state.isUp()) {
        retries.settled();
        state = retries.succeeded("listening on " + opener.place());
      }
      lines.clear();
    }

    private void noticeSilence() throws IOException {
      Duration silence = conversation.silence(System.nanoTime());
      if (silence.compareTo(pace.quiet()) < 0) {
        return;
      }
      String words = opener.place() + " has been silent for " + silence.toSeconds() + " s";
      if (pace.reopenOnQuiet()) {
        throw new IOException(words);
      }
      if (state.phase() != SourceState.Phase.DOWN) {
        LOG.warn("{}: {}; still asking", printer, words);
      }
      state = SourceState.down(words + "; still asking");
    }

    private void handOver(Origin.Direction direction, Payload line) throws InterruptedException {
      inlet.accept(Received.fresh(new Origin.Line(printer, direction), line, clock.now()));
    }
  }
}
